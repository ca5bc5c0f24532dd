-- Rigs and what was measured on their outputs. Everything in SI units; a tolerance is a fraction of its value.
-- Times are ISO 8601 in UTC.

CREATE TABLE rig (
  id                    INTEGER PRIMARY KEY,
  name                  TEXT NOT NULL UNIQUE COLLATE NOCASE,
  -- The audio device; no name: none in particular.
  device_name           TEXT,
  device_description    TEXT,
  device_vendor         TEXT,
  device_ordinal        INTEGER,
  -- Its output, as assumed, given or measured.
  full_scale_volts      REAL NOT NULL,
  full_scale_tolerance  REAL NOT NULL,
  output_ohms           REAL NOT NULL,
  output_tolerance      REAL NOT NULL,
  output_farads         REAL,
  output_farads_tolerance REAL,
  inverted              INTEGER NOT NULL CHECK (inverted IN (0, 1)),
  pop_volts             REAL NOT NULL,
  calibrated            INTEGER NOT NULL CHECK (calibrated IN (0, 1)),
  -- The divider as built; no series resistor: not built yet.
  series_ohms           REAL,
  series_tolerance      REAL,
  shunt_ohms            REAL,
  shunt_tolerance       REAL,
  capacitor_farads      REAL,
  capacitor_tolerance   REAL,
  transformer_ratio     REAL,
  transformer_ratio_tolerance REAL,
  transformer_henries   REAL,
  transformer_henries_tolerance REAL,
  primary_ohms          REAL,
  primary_tolerance     REAL,
  secondary_ohms        REAL,
  secondary_tolerance   REAL,
  most_volt_seconds     REAL,
  lead_ohms             REAL NOT NULL,
  lead_tolerance        REAL NOT NULL,
  lead_farads           REAL NOT NULL,
  -- What it was held to, and why that is more than the standard, if it is.
  normal_amps           REAL NOT NULL,
  fault_amps            REAL NOT NULL,
  override_reason       TEXT,
  notes                 TEXT NOT NULL,
  created               TEXT NOT NULL,
  changed               TEXT NOT NULL
) STRICT;

-- Every calibration that was tried, the failed ones too. Only a good one has an output, and becomes its rig's.
CREATE TABLE calibration (
  id                    INTEGER PRIMARY KEY,
  rig_id                INTEGER NOT NULL REFERENCES rig (id) ON DELETE CASCADE,
  at                    TEXT NOT NULL,
  method                TEXT NOT NULL,
  full_scale_volts      REAL,
  full_scale_tolerance  REAL,
  output_ohms           REAL,
  output_tolerance      REAL,
  output_farads         REAL,
  output_farads_tolerance REAL,
  inverted              INTEGER CHECK (inverted IN (0, 1)),
  pop_volts             REAL,
  remark                TEXT NOT NULL
) STRICT;

CREATE INDEX calibration_of_rig ON calibration (rig_id, id);

-- What held while it was measured, in words; and what was found, in numbers, the unit in the name.
CREATE TABLE calibration_condition (
  calibration_id        INTEGER NOT NULL REFERENCES calibration (id) ON DELETE CASCADE,
  name                  TEXT NOT NULL,
  value                 TEXT NOT NULL,
  PRIMARY KEY (calibration_id, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE calibration_value (
  calibration_id        INTEGER NOT NULL REFERENCES calibration (id) ON DELETE CASCADE,
  name                  TEXT NOT NULL,
  value                 REAL NOT NULL,
  PRIMARY KEY (calibration_id, name)
) STRICT, WITHOUT ROWID;
