-- Fault hunts, and the scales of displays that were learned. Times are ISO 8601 in UTC, with
-- nine decimals, so that they sort.

CREATE TABLE job (
  id                    INTEGER PRIMARY KEY,
  name                  TEXT NOT NULL,
  -- The name in small letters, since SQLite itself knows the case of ASCII letters only.
  name_key              TEXT NOT NULL UNIQUE,
  begun                 TEXT NOT NULL,
  vehicle               TEXT NOT NULL,
  complaint             TEXT NOT NULL,
  who                   TEXT NOT NULL,
  -- What the signal comes from.
  rig                   TEXT,
  input                 TEXT,
  pin_from_volts        REAL NOT NULL,
  pin_to_volts          REAL NOT NULL,
  archived              INTEGER NOT NULL CHECK (archived IN (0, 1)),
  -- From here on: what follows from the rest, so that a list needs no events.
  circuit_title         TEXT NOT NULL,
  events                INTEGER NOT NULL,
  state                 TEXT NOT NULL,
  closed                INTEGER NOT NULL CHECK (closed IN (0, 1)),
  changed               TEXT NOT NULL,
  -- All that one may search for, in small letters.
  search_text           TEXT NOT NULL
) STRICT;

-- Lines on rig, calibration and way of playing.
CREATE TABLE job_equipment (
  job_id                INTEGER NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  number                INTEGER NOT NULL,
  words                 TEXT NOT NULL,
  PRIMARY KEY (job_id, number)
) STRICT, WITHOUT ROWID;

-- The files of the circuits and their patterns, whole, as they were when the job began.
CREATE TABLE job_file (
  job_id                INTEGER NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  role                  TEXT NOT NULL CHECK (role IN ('suspect circuit', 'suspect pattern', 'reference circuit', 'reference pattern')),
  name                  TEXT NOT NULL,
  text                  TEXT NOT NULL,
  PRIMARY KEY (job_id, role)
) STRICT;

-- What happened, in order; rows are only ever added. What an entry says stands in the values.
CREATE TABLE job_event (
  job_id                INTEGER NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  number                INTEGER NOT NULL CHECK (number >= 1),
  at                    TEXT NOT NULL,
  kind                  TEXT NOT NULL,
  PRIMARY KEY (job_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE job_event_value (
  job_id                INTEGER NOT NULL,
  number                INTEGER NOT NULL,
  name                  TEXT NOT NULL,
  value                 TEXT NOT NULL,
  PRIMARY KEY (job_id, number, name),
  FOREIGN KEY (job_id, number) REFERENCES job_event (job_id, number) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- How the displays of vehicles turn frequency into a number: straight lines, as learned; the newest of a circuit counts.
CREATE TABLE learned_scale (
  id                    INTEGER PRIMARY KEY,
  vehicle               TEXT NOT NULL,
  vehicle_key           TEXT NOT NULL,
  circuit_id            TEXT NOT NULL,
  -- Of the display; whatever has no unit in its name here is in this one.
  unit                  TEXT NOT NULL,
  step                  REAL NOT NULL,
  -- The line as it is used, in the base unit of what is displayed.
  base_per_hz           REAL NOT NULL,
  offset_base           REAL NOT NULL,
  tolerance_percent     REAL NOT NULL,
  tolerance             REAL NOT NULL,
  -- What is known of it: 19 times out of 20 the true one lies within.
  per_hz_low            REAL NOT NULL,
  per_hz                REAL NOT NULL,
  per_hz_high           REAL NOT NULL,
  offset_low            REAL NOT NULL,
  offset_value          REAL NOT NULL,
  offset_high           REAL NOT NULL,
  at                    TEXT NOT NULL,
  origin                TEXT NOT NULL
) STRICT;

CREATE INDEX learned_scale_of_vehicle ON learned_scale (vehicle_key, circuit_id);
