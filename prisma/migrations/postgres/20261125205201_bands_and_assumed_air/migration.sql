-- AlterTable
ALTER TABLE "Sorbent" ADD COLUMN     "targetBandWaterFraction" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Lot" ADD COLUMN     "targetBandWaterFraction" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Room" ADD COLUMN     "assumedAir" JSONB;
