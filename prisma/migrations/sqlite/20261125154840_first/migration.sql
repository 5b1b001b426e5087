-- CreateTable
CREATE TABLE "Lab" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "settings" JSONB NOT NULL,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Counter" (
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "value" INTEGER NOT NULL,

    PRIMARY KEY ("labId", "name")
);

-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "shortName" TEXT NOT NULL,
    CONSTRAINT "Person_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Supplier" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    CONSTRAINT "Supplier_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Sorbent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sorbentClass" TEXT NOT NULL,
    "particleSizeLowUm" REAL,
    "particleSizeHighUm" REAL,
    "meshLow" INTEGER,
    "meshHigh" INTEGER,
    "poreSizeNm" REAL,
    "bondedPhase" TEXT,
    "reaction" TEXT,
    "targetPolicy" TEXT NOT NULL DEFAULT 'DRY',
    "targetUpperWaterFraction" REAL,
    "targetLowerWaterFraction" REAL,
    CONSTRAINT "Sorbent_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SorbentProperty" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "value" REAL,
    "unit" TEXT NOT NULL,
    "origin" TEXT NOT NULL,
    "confidence" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    CONSTRAINT "SorbentProperty_sorbentId_fkey" FOREIGN KEY ("sorbentId") REFERENCES "Sorbent" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Lot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "supplierId" TEXT,
    "lotNumber" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "retestOn" DATETIME,
    "certificateWaterFraction" REAL,
    "certificateMaxWaterFraction" REAL,
    "certificate" JSONB NOT NULL,
    "targetPolicy" TEXT,
    "targetUpperWaterFraction" REAL,
    "targetLowerWaterFraction" REAL,
    "note" TEXT,
    CONSTRAINT "Lot_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Lot_sorbentId_fkey" FOREIGN KEY ("sorbentId") REFERENCES "Sorbent" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Lot_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Vessel" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "innerDiameterMm" REAL NOT NULL,
    "heightMm" REAL NOT NULL,
    "mouthDiameterMm" REAL NOT NULL,
    "volumeMl" REAL NOT NULL,
    "source" TEXT NOT NULL,
    CONSTRAINT "Vessel_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Container" (
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
    CONSTRAINT "Container_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Container_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Container_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Container_vesselId_fkey" FOREIGN KEY ("vesselId") REFERENCES "Vessel" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Container_takenFromId_fkey" FOREIGN KEY ("takenFromId") REFERENCES "Container" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Event" (
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
    CONSTRAINT "Event_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Event_otherContainerId_fkey" FOREIGN KEY ("otherContainerId") REFERENCES "Container" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Event_actorId_fkey" FOREIGN KEY ("actorId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Event_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Event" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Hold" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "dryGrams" REAL,
    "plates" INTEGER,
    "forWhat" TEXT NOT NULL,
    "until" DATETIME,
    "madeAt" DATETIME NOT NULL,
    "releasedAt" DATETIME,
    CONSTRAINT "Hold_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Room" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "assumedHumidityPercent" REAL,
    "assumedTemperatureC" REAL,
    "desiccantRenewedAt" DATETIME,
    CONSTRAINT "Room_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Sensor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "setAsideWhy" TEXT,
    CONSTRAINT "Sensor_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReadingDay" (
    "labId" TEXT NOT NULL,
    "sensorId" TEXT NOT NULL,
    "quantity" TEXT NOT NULL,
    "day" INTEGER NOT NULL,
    "count" INTEGER NOT NULL,
    "offsetsMs" BLOB NOT NULL,
    "values" BLOB NOT NULL,

    PRIMARY KEY ("sensorId", "quantity", "day"),
    CONSTRAINT "ReadingDay_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RoomDay" (
    "labId" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "day" INTEGER NOT NULL,
    "blocks" BLOB NOT NULL,

    PRIMARY KEY ("roomId", "day"),
    CONSTRAINT "RoomDay_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StoredFile" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "sizeBytes" INTEGER NOT NULL,
    "bytes" BLOB,
    "receivedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Import" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "fileId" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "answers" JSONB NOT NULL,
    "summary" JSONB NOT NULL,
    CONSTRAINT "Import_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Import_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Exposure" (
    "containerId" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "asOf" DATETIME NOT NULL,
    "state" TEXT NOT NULL,
    "urgency" REAL NOT NULL,
    "staleFrom" DATETIME,
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

-- CreateTable
CREATE TABLE "Checkpoint" (
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "data" BLOB NOT NULL,

    PRIMARY KEY ("containerId", "at")
);

-- CreateTable
CREATE TABLE "Parcel" (
    "eventId" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "fromContainerId" TEXT NOT NULL,
    "toContainerId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "data" BLOB NOT NULL
);

-- CreateTable
CREATE TABLE "LearnedFactor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "factor" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "lnValue" REAL NOT NULL,
    "lnSd" REAL NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "because" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "DryingRequest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "dryGrams" REAL,
    "plates" INTEGER,
    "why" TEXT NOT NULL,
    "wantedBy" DATETIME,
    "position" REAL NOT NULL,
    "state" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "eventId" TEXT,
    CONSTRAINT "DryingRequest_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ClientKey" (
    "labId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "bodyHash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,
    "madeAt" DATETIME NOT NULL,

    PRIMARY KEY ("labId", "key")
);

-- CreateTable
CREATE TABLE "Change" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "labId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "kind" TEXT NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "Lab_name_key" ON "Lab"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Person_labId_shortName_key" ON "Person"("labId", "shortName");

-- CreateIndex
CREATE UNIQUE INDEX "Supplier_labId_name_key" ON "Supplier"("labId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Sorbent_labId_name_key" ON "Sorbent"("labId", "name");

-- CreateIndex
CREATE INDEX "SorbentProperty_labId_idx" ON "SorbentProperty"("labId");

-- CreateIndex
CREATE UNIQUE INDEX "SorbentProperty_sorbentId_name_key" ON "SorbentProperty"("sorbentId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Lot_labId_sorbentId_lotNumber_key" ON "Lot"("labId", "sorbentId", "lotNumber");

-- CreateIndex
CREATE UNIQUE INDEX "Vessel_labId_name_key" ON "Vessel"("labId", "name");

-- CreateIndex
CREATE INDEX "Container_labId_isOpen_finishedAt_idx" ON "Container"("labId", "isOpen", "finishedAt");

-- CreateIndex
CREATE INDEX "Container_lotId_idx" ON "Container"("lotId");

-- CreateIndex
CREATE INDEX "Container_roomId_idx" ON "Container"("roomId");

-- CreateIndex
CREATE INDEX "Container_takenFromId_idx" ON "Container"("takenFromId");

-- CreateIndex
CREATE UNIQUE INDEX "Container_labId_label_key" ON "Container"("labId", "label");

-- CreateIndex
CREATE UNIQUE INDEX "Event_correctsId_key" ON "Event"("correctsId");

-- CreateIndex
CREATE INDEX "Event_containerId_at_idx" ON "Event"("containerId", "at");

-- CreateIndex
CREATE INDEX "Event_otherContainerId_at_idx" ON "Event"("otherContainerId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "Event_labId_recordedSeq_key" ON "Event"("labId", "recordedSeq");

-- CreateIndex
CREATE INDEX "Hold_labId_releasedAt_idx" ON "Hold"("labId", "releasedAt");

-- CreateIndex
CREATE INDEX "Hold_containerId_idx" ON "Hold"("containerId");

-- CreateIndex
CREATE UNIQUE INDEX "Room_labId_name_key" ON "Room"("labId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Sensor_labId_roomId_name_key" ON "Sensor"("labId", "roomId", "name");

-- CreateIndex
CREATE INDEX "ReadingDay_labId_idx" ON "ReadingDay"("labId");

-- CreateIndex
CREATE INDEX "RoomDay_labId_idx" ON "RoomDay"("labId");

-- CreateIndex
CREATE INDEX "StoredFile_labId_sha256_idx" ON "StoredFile"("labId", "sha256");

-- CreateIndex
CREATE INDEX "Import_labId_at_idx" ON "Import"("labId", "at");

-- CreateIndex
CREATE INDEX "Exposure_labId_urgency_idx" ON "Exposure"("labId", "urgency");

-- CreateIndex
CREATE INDEX "Exposure_labId_state_urgency_idx" ON "Exposure"("labId", "state", "urgency");

-- CreateIndex
CREATE INDEX "Exposure_labId_staleFrom_idx" ON "Exposure"("labId", "staleFrom");

-- CreateIndex
CREATE INDEX "Checkpoint_labId_idx" ON "Checkpoint"("labId");

-- CreateIndex
CREATE INDEX "Parcel_labId_idx" ON "Parcel"("labId");

-- CreateIndex
CREATE INDEX "Parcel_fromContainerId_at_idx" ON "Parcel"("fromContainerId", "at");

-- CreateIndex
CREATE INDEX "Parcel_toContainerId_at_idx" ON "Parcel"("toContainerId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "LearnedFactor_labId_factor_version_key" ON "LearnedFactor"("labId", "factor", "version");

-- CreateIndex
CREATE INDEX "DryingRequest_labId_state_position_idx" ON "DryingRequest"("labId", "state", "position");

-- CreateIndex
CREATE INDEX "Change_labId_id_idx" ON "Change"("labId", "id");
