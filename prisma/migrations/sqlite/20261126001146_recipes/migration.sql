-- CreateTable
CREATE TABLE "Recipe" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "dries" TEXT NOT NULL,
    "vacuum" BOOLEAN,
    "temperatureLowC" REAL,
    "temperatureHighC" REAL,
    "minutesLow" REAL,
    "minutesHigh" REAL,
    "depthMm" REAL,
    "heatUpMinutes" REAL,
    "coolDownMinutes" REAL,
    "upperC" REAL,
    "upperSource" TEXT,
    "note" TEXT,
    "changedAt" DATETIME NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "Recipe_labId_dries_key" ON "Recipe"("labId", "dries");
