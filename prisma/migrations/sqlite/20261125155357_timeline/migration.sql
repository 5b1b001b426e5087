-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Container" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "vesselId" TEXT,
    "takenFromId" TEXT,
    "tareGrams" REAL,
    "usualClosure" TEXT NOT NULL,
    "innerDiameterMm" REAL,
    "heightMm" REAL,
    "mouthDiameterMm" REAL,
    "volumeMl" REAL,
    "bedLengthMm" REAL,
    "backing" TEXT,
    "layerThicknessMm" REAL,
    "plateWidthMm" REAL,
    "plateHeightMm" REAL,
    "roomId" TEXT NOT NULL,
    "cameInAt" DATETIME NOT NULL,
    "isOpen" BOOLEAN NOT NULL,
    "openedAt" DATETIME,
    "closure" TEXT NOT NULL,
    "dryGrams" REAL NOT NULL,
    "dryGramsAssumed" BOOLEAN NOT NULL DEFAULT false,
    "plates" INTEGER,
    "heldDryGrams" REAL NOT NULL DEFAULT 0,
    "heldPlates" INTEGER NOT NULL DEFAULT 0,
    "scooping" TEXT NOT NULL DEFAULT 'TOP',
    "habit" JSONB,
    "wettedAt" DATETIME,
    "touchedSolventAt" DATETIME,
    "finishedAt" DATETIME,
    "isVoid" BOOLEAN NOT NULL DEFAULT false,
    CONSTRAINT "Container_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Container_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Container_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Container_vesselId_fkey" FOREIGN KEY ("vesselId") REFERENCES "Vessel" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Container_takenFromId_fkey" FOREIGN KEY ("takenFromId") REFERENCES "Container" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Container" ("backing", "bedLengthMm", "cameInAt", "closure", "dryGrams", "dryGramsAssumed", "finishedAt", "habit", "heightMm", "heldDryGrams", "heldPlates", "id", "innerDiameterMm", "isOpen", "kind", "labId", "label", "layerThicknessMm", "lotId", "mouthDiameterMm", "openedAt", "plateHeightMm", "plateWidthMm", "plates", "roomId", "scooping", "takenFromId", "tareGrams", "touchedSolventAt", "usualClosure", "vesselId", "volumeMl", "wettedAt") SELECT "backing", "bedLengthMm", "cameInAt", "closure", "dryGrams", "dryGramsAssumed", "finishedAt", "habit", "heightMm", "heldDryGrams", "heldPlates", "id", "innerDiameterMm", "isOpen", "kind", "labId", "label", "layerThicknessMm", "lotId", "mouthDiameterMm", "openedAt", "plateHeightMm", "plateWidthMm", "plates", "roomId", "scooping", "takenFromId", "tareGrams", "touchedSolventAt", "usualClosure", "vesselId", "volumeMl", "wettedAt" FROM "Container";
DROP TABLE "Container";
ALTER TABLE "new_Container" RENAME TO "Container";
CREATE INDEX "Container_labId_isOpen_finishedAt_idx" ON "Container"("labId", "isOpen", "finishedAt");
CREATE INDEX "Container_lotId_idx" ON "Container"("lotId");
CREATE INDEX "Container_roomId_idx" ON "Container"("roomId");
CREATE INDEX "Container_takenFromId_idx" ON "Container"("takenFromId");
CREATE UNIQUE INDEX "Container_labId_label_key" ON "Container"("labId", "label");
CREATE TABLE "new_Event" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "otherContainerId" TEXT,
    "type" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    "recordedSeq" INTEGER NOT NULL,
    "actorId" TEXT,
    "note" TEXT,
    "detail" JSONB NOT NULL,
    "dryGrams" REAL,
    "plates" INTEGER,
    "correctsId" TEXT,
    "stands" BOOLEAN NOT NULL DEFAULT true,
    "place" INTEGER NOT NULL,
    CONSTRAINT "Event_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Event_otherContainerId_fkey" FOREIGN KEY ("otherContainerId") REFERENCES "Container" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Event_actorId_fkey" FOREIGN KEY ("actorId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Event_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Event" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Event" ("actorId", "at", "containerId", "correctsId", "detail", "dryGrams", "id", "labId", "note", "otherContainerId", "plates", "recordedAt", "recordedSeq", "type", "place") SELECT "actorId", "at", "containerId", "correctsId", "detail", "dryGrams", "id", "labId", "note", "otherContainerId", "plates", "recordedAt", "recordedSeq", "type", "recordedSeq" FROM "Event";
DROP TABLE "Event";
ALTER TABLE "new_Event" RENAME TO "Event";
CREATE UNIQUE INDEX "Event_correctsId_key" ON "Event"("correctsId");
CREATE INDEX "Event_containerId_at_idx" ON "Event"("containerId", "at");
CREATE INDEX "Event_otherContainerId_at_idx" ON "Event"("otherContainerId", "at");
CREATE UNIQUE INDEX "Event_labId_recordedSeq_key" ON "Event"("labId", "recordedSeq");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
