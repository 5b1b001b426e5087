-- AlterTable
ALTER TABLE "Container" ADD COLUMN "oldCode" TEXT;

-- CreateTable
CREATE TABLE "StockList" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "sizeBytes" INTEGER NOT NULL,
    "sheets" BLOB NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "headings" TEXT,
    "answers" JSONB,
    "receipt" JSONB,
    "bookedAt" DATETIME,
    "takenBackAt" DATETIME
);

-- CreateIndex
CREATE INDEX "StockList_labId_headings_idx" ON "StockList"("labId", "headings");

-- CreateIndex
CREATE INDEX "StockList_labId_sha256_idx" ON "StockList"("labId", "sha256");

-- CreateIndex
CREATE INDEX "Container_labId_oldCode_idx" ON "Container"("labId", "oldCode");
