-- AlterTable
ALTER TABLE "DryingRequest" ADD COLUMN     "minutes" DOUBLE PRECISION,
ADD COLUMN     "temperatureC" DOUBLE PRECISION;
