-- CreateEnum
CREATE TYPE "OrderState" AS ENUM ('ASKED_FOR', 'BOUGHT', 'ON_THE_SHELF', 'CALLED_OFF');

-- AlterTable
ALTER TABLE "Supplier" ADD COLUMN     "deliveryFeeMinor" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "minOrderMinor" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Hold" ADD COLUMN     "campaignId" TEXT;

-- AlterTable
ALTER TABLE "Need" ADD COLUMN     "campaignId" TEXT;

-- CreateTable
CREATE TABLE "Campaign" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" "Backing",
    "lotId" TEXT,
    "keptAt" TIMESTAMP(3),
    "uses" JSONB NOT NULL,
    "limitWaterFraction" DOUBLE PRECISION,
    "uncoveredMinor" INTEGER,
    "note" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "droppedAt" TIMESTAMP(3),

    CONSTRAINT "Campaign_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StorageGroup" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "capacityL" DOUBLE PRECISION NOT NULL,
    "overMinor" INTEGER NOT NULL DEFAULT 0,
    "addedAt" TIMESTAMP(3) NOT NULL,
    "removedAt" TIMESTAMP(3),

    CONSTRAINT "StorageGroup_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "BoughtItem" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" "Backing",
    "storageId" TEXT,
    "litres" DOUBLE PRECISION,
    "serviceLevel" DOUBLE PRECISION,
    "weeklyUse" DOUBLE PRECISION,
    "checkWeeks" INTEGER,
    "checkMinor" INTEGER,
    "checkSample" DOUBLE PRECISION,
    "checkKeep" DOUBLE PRECISION,
    "checkWithoutMinor" INTEGER,
    "isExpiring" BOOLEAN NOT NULL DEFAULT false,
    "changedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "BoughtItem_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Offer" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "supplierId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" "Backing",
    "articleNumber" TEXT,
    "packGrams" DOUBLE PRECISION,
    "packPlates" INTEGER,
    "prices" JSONB NOT NULL,
    "leadLeastWeeks" INTEGER NOT NULL,
    "leadUsualWeeks" INTEGER NOT NULL,
    "leadMostWeeks" INTEGER NOT NULL,
    "shelfWeeks" INTEGER,
    "mostPacks" INTEGER,
    "quotedOn" TEXT,
    "note" TEXT,
    "addedAt" TIMESTAMP(3) NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "removedAt" TIMESTAMP(3),

    CONSTRAINT "Offer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Order" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "state" "OrderState" NOT NULL,
    "offerId" TEXT,
    "supplierId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" "Backing",
    "packs" INTEGER NOT NULL,
    "packGrams" DOUBLE PRECISION,
    "packPlates" INTEGER,
    "priceMinor" INTEGER NOT NULL,
    "lotWished" TEXT,
    "reason" TEXT,
    "note" TEXT,
    "theirNumber" TEXT,
    "askedAt" TIMESTAMP(3) NOT NULL,
    "boughtAt" TIMESTAMP(3),
    "expectedOn" TEXT,
    "shelvedAt" TIMESTAMP(3),
    "calledOffAt" TIMESTAMP(3),

    CONSTRAINT "Order_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Delivery" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "lotId" TEXT,
    "lotNumber" TEXT NOT NULL,
    "packs" INTEGER NOT NULL,
    "damagedPacks" INTEGER NOT NULL DEFAULT 0,
    "isOtherLot" BOOLEAN NOT NULL DEFAULT false,
    "containers" JSONB NOT NULL,
    "events" JSONB NOT NULL,
    "note" TEXT,
    "recordedAt" TIMESTAMP(3) NOT NULL,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "Delivery_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PurchasePlan" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "fromDay" TEXT NOT NULL,
    "weeks" INTEGER NOT NULL,
    "because" TEXT NOT NULL,
    "whatIf" JSONB,
    "seconds" DOUBLE PRECISION NOT NULL,
    "problem" JSONB NOT NULL,
    "answer" JSONB NOT NULL,
    "beside" JSONB NOT NULL,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "PurchasePlan_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Campaign_labId_droppedAt_idx" ON "Campaign"("labId", "droppedAt");

-- CreateIndex
CREATE INDEX "Campaign_lotId_idx" ON "Campaign"("lotId");

-- CreateIndex
CREATE INDEX "StorageGroup_labId_removedAt_idx" ON "StorageGroup"("labId", "removedAt");

-- CreateIndex
CREATE UNIQUE INDEX "BoughtItem_labId_item_key" ON "BoughtItem"("labId", "item");

-- CreateIndex
CREATE INDEX "Offer_labId_removedAt_idx" ON "Offer"("labId", "removedAt");

-- CreateIndex
CREATE INDEX "Offer_sorbentId_idx" ON "Offer"("sorbentId");

-- CreateIndex
CREATE INDEX "Order_labId_state_idx" ON "Order"("labId", "state");

-- CreateIndex
CREATE INDEX "Order_offerId_idx" ON "Order"("offerId");

-- CreateIndex
CREATE UNIQUE INDEX "Order_labId_number_key" ON "Order"("labId", "number");

-- CreateIndex
CREATE INDEX "Delivery_orderId_idx" ON "Delivery"("orderId");

-- CreateIndex
CREATE INDEX "Delivery_labId_at_idx" ON "Delivery"("labId", "at");

-- CreateIndex
CREATE INDEX "PurchasePlan_labId_madeAt_idx" ON "PurchasePlan"("labId", "madeAt");

-- CreateIndex
CREATE INDEX "Hold_campaignId_idx" ON "Hold"("campaignId");

-- CreateIndex
CREATE INDEX "Need_campaignId_idx" ON "Need"("campaignId");

-- AddForeignKey
ALTER TABLE "BoughtItem" ADD CONSTRAINT "BoughtItem_storageId_fkey" FOREIGN KEY ("storageId") REFERENCES "StorageGroup"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Offer" ADD CONSTRAINT "Offer_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Order" ADD CONSTRAINT "Order_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Order" ADD CONSTRAINT "Order_offerId_fkey" FOREIGN KEY ("offerId") REFERENCES "Offer"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Delivery" ADD CONSTRAINT "Delivery_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "Order"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
