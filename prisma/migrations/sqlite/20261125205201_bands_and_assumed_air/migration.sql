-- AlterTable
ALTER TABLE "Sorbent" ADD COLUMN "targetBandWaterFraction" REAL;

-- AlterTable
ALTER TABLE "Lot" ADD COLUMN "targetBandWaterFraction" REAL;

-- AlterTable
ALTER TABLE "Room" ADD COLUMN "assumedAir" JSONB;
