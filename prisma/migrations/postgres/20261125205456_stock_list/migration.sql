-- AlterTable
ALTER TABLE "Container" ADD COLUMN     "oldCode" TEXT;

-- CreateTable
CREATE TABLE "StockList" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "sizeBytes" INTEGER NOT NULL,
    "sheets" BYTEA NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,
    "headings" TEXT,
    "answers" JSONB,
    "receipt" JSONB,
    "bookedAt" TIMESTAMP(3),
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "StockList_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "StockList_labId_headings_idx" ON "StockList"("labId", "headings");

-- CreateIndex
CREATE INDEX "StockList_labId_sha256_idx" ON "StockList"("labId", "sha256");

-- CreateIndex
CREATE INDEX "Container_labId_oldCode_idx" ON "Container"("labId", "oldCode");
