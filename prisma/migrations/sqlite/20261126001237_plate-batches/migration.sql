-- AlterTable
ALTER TABLE "Container" ADD COLUMN "hoodAt" DATETIME;
ALTER TABLE "Container" ADD COLUMN "prepared" JSONB;
ALTER TABLE "Container" ADD COLUMN "preparedAt" DATETIME;
ALTER TABLE "Container" ADD COLUMN "regime" TEXT;
ALTER TABLE "Container" ADD COLUMN "regimeHumidityPercent" REAL;
ALTER TABLE "Container" ADD COLUMN "regimeTemperatureC" REAL;

-- AlterTable
ALTER TABLE "Event" ADD COLUMN "carried" JSONB;
