-- AlterTable
ALTER TABLE "Container" ADD COLUMN     "isVoid" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "Event" ADD COLUMN     "place" INTEGER,
ADD COLUMN     "stands" BOOLEAN NOT NULL DEFAULT true;

UPDATE "Event" SET "place" = "recordedSeq";

ALTER TABLE "Event" ALTER COLUMN "place" SET NOT NULL;
