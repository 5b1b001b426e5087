-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Exposure" (
    "containerId" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "asOf" DATETIME NOT NULL,
    "state" TEXT NOT NULL,
    "urgency" REAL NOT NULL,
    "staleFrom" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 0,
    "meanWaterFraction" REAL,
    "low" REAL,
    "high" REAL,
    "scoopWaterFraction" REAL,
    "scoopLow" REAL,
    "scoopHigh" REAL,
    "topWaterFraction" REAL,
    "chancePastLimit" REAL,
    "hoursToLimit" REAL,
    "hoursToLimitOpen" REAL,
    "hoursToLimitClosed" REAL,
    "upperWaterFraction" REAL,
    "lowerWaterFraction" REAL,
    "grade" TEXT,
    "minutesToRoomEquilibrium" REAL,
    "uncertainAirFraction" REAL,
    "reason" TEXT NOT NULL,
    CONSTRAINT "Exposure_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Exposure" ("asOf", "chancePastLimit", "containerId", "grade", "high", "hoursToLimit", "hoursToLimitClosed", "hoursToLimitOpen", "labId", "low", "lowerWaterFraction", "meanWaterFraction", "minutesToRoomEquilibrium", "reason", "scoopHigh", "scoopLow", "scoopWaterFraction", "staleFrom", "state", "topWaterFraction", "uncertainAirFraction", "upperWaterFraction", "urgency") SELECT "asOf", "chancePastLimit", "containerId", "grade", "high", "hoursToLimit", "hoursToLimitClosed", "hoursToLimitOpen", "labId", "low", "lowerWaterFraction", "meanWaterFraction", "minutesToRoomEquilibrium", "reason", "scoopHigh", "scoopLow", "scoopWaterFraction", "staleFrom", "state", "topWaterFraction", "uncertainAirFraction", "upperWaterFraction", "urgency" FROM "Exposure";
DROP TABLE "Exposure";
ALTER TABLE "new_Exposure" RENAME TO "Exposure";
CREATE INDEX "Exposure_labId_urgency_containerId_idx" ON "Exposure"("labId", "urgency", "containerId");
CREATE INDEX "Exposure_labId_state_urgency_containerId_idx" ON "Exposure"("labId", "state", "urgency", "containerId");
CREATE INDEX "Exposure_labId_staleFrom_idx" ON "Exposure"("labId", "staleFrom");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
