-- DropIndex
DROP INDEX "Exposure_labId_urgency_idx";

-- DropIndex
DROP INDEX "Exposure_labId_state_urgency_idx";

-- AlterTable
ALTER TABLE "Exposure" ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 0;

-- CreateIndex
CREATE INDEX "Exposure_labId_urgency_containerId_idx" ON "Exposure"("labId", "urgency", "containerId");

-- CreateIndex
CREATE INDEX "Exposure_labId_state_urgency_containerId_idx" ON "Exposure"("labId", "state", "urgency", "containerId");
