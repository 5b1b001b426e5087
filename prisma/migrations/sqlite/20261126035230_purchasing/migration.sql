-- AlterTable
ALTER TABLE "Hold" ADD COLUMN "campaignId" TEXT;

-- AlterTable
ALTER TABLE "Need" ADD COLUMN "campaignId" TEXT;

-- CreateTable
CREATE TABLE "Campaign" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" TEXT,
    "lotId" TEXT,
    "keptAt" DATETIME,
    "uses" JSONB NOT NULL,
    "limitWaterFraction" REAL,
    "uncoveredMinor" INTEGER,
    "note" TEXT,
    "madeAt" DATETIME NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "droppedAt" DATETIME
);

-- CreateTable
CREATE TABLE "StorageGroup" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "capacityL" REAL NOT NULL,
    "overMinor" INTEGER NOT NULL DEFAULT 0,
    "addedAt" DATETIME NOT NULL,
    "removedAt" DATETIME
);

-- CreateTable
CREATE TABLE "BoughtItem" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" TEXT,
    "storageId" TEXT,
    "litres" REAL,
    "serviceLevel" REAL,
    "weeklyUse" REAL,
    "checkWeeks" INTEGER,
    "checkMinor" INTEGER,
    "checkSample" REAL,
    "checkKeep" REAL,
    "checkWithoutMinor" INTEGER,
    "isExpiring" BOOLEAN NOT NULL DEFAULT false,
    "changedAt" DATETIME NOT NULL,
    CONSTRAINT "BoughtItem_storageId_fkey" FOREIGN KEY ("storageId") REFERENCES "StorageGroup" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Offer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "supplierId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" TEXT,
    "articleNumber" TEXT,
    "packGrams" REAL,
    "packPlates" INTEGER,
    "prices" JSONB NOT NULL,
    "leadLeastWeeks" INTEGER NOT NULL,
    "leadUsualWeeks" INTEGER NOT NULL,
    "leadMostWeeks" INTEGER NOT NULL,
    "shelfWeeks" INTEGER,
    "mostPacks" INTEGER,
    "quotedOn" TEXT,
    "note" TEXT,
    "addedAt" DATETIME NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "removedAt" DATETIME,
    CONSTRAINT "Offer_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Order" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "offerId" TEXT,
    "supplierId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "backing" TEXT,
    "packs" INTEGER NOT NULL,
    "packGrams" REAL,
    "packPlates" INTEGER,
    "priceMinor" INTEGER NOT NULL,
    "lotWished" TEXT,
    "reason" TEXT,
    "note" TEXT,
    "theirNumber" TEXT,
    "askedAt" DATETIME NOT NULL,
    "boughtAt" DATETIME,
    "expectedOn" TEXT,
    "shelvedAt" DATETIME,
    "calledOffAt" DATETIME,
    CONSTRAINT "Order_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Order_offerId_fkey" FOREIGN KEY ("offerId") REFERENCES "Offer" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Delivery" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "lotId" TEXT,
    "lotNumber" TEXT NOT NULL,
    "packs" INTEGER NOT NULL,
    "damagedPacks" INTEGER NOT NULL DEFAULT 0,
    "isOtherLot" BOOLEAN NOT NULL DEFAULT false,
    "containers" JSONB NOT NULL,
    "events" JSONB NOT NULL,
    "note" TEXT,
    "recordedAt" DATETIME NOT NULL,
    "takenBackAt" DATETIME,
    CONSTRAINT "Delivery_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "Order" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PurchasePlan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "fromDay" TEXT NOT NULL,
    "weeks" INTEGER NOT NULL,
    "because" TEXT NOT NULL,
    "whatIf" JSONB,
    "seconds" REAL NOT NULL,
    "problem" JSONB NOT NULL,
    "answer" JSONB NOT NULL,
    "beside" JSONB NOT NULL,
    "takenBackAt" DATETIME
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Supplier" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "deliveryFeeMinor" INTEGER NOT NULL DEFAULT 0,
    "minOrderMinor" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "Supplier_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Supplier" ("id", "labId", "name") SELECT "id", "labId", "name" FROM "Supplier";
DROP TABLE "Supplier";
ALTER TABLE "new_Supplier" RENAME TO "Supplier";
CREATE UNIQUE INDEX "Supplier_labId_name_key" ON "Supplier"("labId", "name");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

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
