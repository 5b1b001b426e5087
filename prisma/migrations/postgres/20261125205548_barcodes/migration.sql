-- AlterEnum
ALTER TYPE "EventType" ADD VALUE 'NOT_FOUND';

-- CreateTable
CREATE TABLE "Barcode" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "supplierId" TEXT,
    "kind" "ContainerKind" NOT NULL,
    "grams" DOUBLE PRECISION,
    "plates" INTEGER,
    "vesselId" TEXT,
    "backing" "Backing",
    "closure" "Closure",
    "learnedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Barcode_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Barcode_sorbentId_idx" ON "Barcode"("sorbentId");

-- CreateIndex
CREATE UNIQUE INDEX "Barcode_labId_code_key" ON "Barcode"("labId", "code");

-- AddForeignKey
ALTER TABLE "Barcode" ADD CONSTRAINT "Barcode_sorbentId_fkey" FOREIGN KEY ("sorbentId") REFERENCES "Sorbent"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Barcode" ADD CONSTRAINT "Barcode_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Barcode" ADD CONSTRAINT "Barcode_vesselId_fkey" FOREIGN KEY ("vesselId") REFERENCES "Vessel"("id") ON DELETE SET NULL ON UPDATE CASCADE;
