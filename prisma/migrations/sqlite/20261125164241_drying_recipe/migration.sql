-- AlterTable
ALTER TABLE "DryingRequest" ADD COLUMN "minutes" REAL;
ALTER TABLE "DryingRequest" ADD COLUMN "temperatureC" REAL;
