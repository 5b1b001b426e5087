-- CreateEnum
CREATE TYPE "PlateRegime" AS ENUM ('DRY_UNTIL_SPOTTED', 'EQUILIBRATED');

-- AlterTable
ALTER TABLE "Container" ADD COLUMN     "hoodAt" TIMESTAMP(3),
ADD COLUMN     "prepared" JSONB,
ADD COLUMN     "preparedAt" TIMESTAMP(3),
ADD COLUMN     "regime" "PlateRegime",
ADD COLUMN     "regimeHumidityPercent" DOUBLE PRECISION,
ADD COLUMN     "regimeTemperatureC" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Event" ADD COLUMN     "carried" JSONB;
