-- CreateTable
CREATE TABLE "Recipe" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "dries" TEXT NOT NULL,
    "vacuum" BOOLEAN,
    "temperatureLowC" DOUBLE PRECISION,
    "temperatureHighC" DOUBLE PRECISION,
    "minutesLow" DOUBLE PRECISION,
    "minutesHigh" DOUBLE PRECISION,
    "depthMm" DOUBLE PRECISION,
    "heatUpMinutes" DOUBLE PRECISION,
    "coolDownMinutes" DOUBLE PRECISION,
    "upperC" DOUBLE PRECISION,
    "upperSource" TEXT,
    "note" TEXT,
    "changedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Recipe_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Recipe_labId_dries_key" ON "Recipe"("labId", "dries");
