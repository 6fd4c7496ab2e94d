"""The tables, and how an older file becomes one of today."""

APPLICATION_ID = 0x504C4E4B
"""By which a file of ours is known: PLNK."""

FIRST = """
CREATE TABLE job (
    id TEXT PRIMARY KEY,
    definition TEXT NOT NULL CHECK (json_valid(definition)),
    layout_id INTEGER REFERENCES layout (id),
    -- The boards that the tally held when work began, as a list; nothing before it did.
    begun_with TEXT CHECK (begun_with IS NULL OR json_valid(begun_with)),
    -- What is wished of a layout; nothing when nothing is.
    wishes TEXT CHECK (wishes IS NULL OR json_valid(wishes)),
    -- How many pieces hang, for the list of jobs, which would else read every mark of every job.
    hung INTEGER NOT NULL DEFAULT 0,
    changed_at TEXT NOT NULL,
    removed_at TEXT
) STRICT;

CREATE TABLE board (
    job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    id TEXT NOT NULL,
    -- Where it stands in the tally; there may be gaps.
    place INTEGER NOT NULL,
    length_nm INTEGER NOT NULL CHECK (length_nm > 0),
    width_start_nm INTEGER NOT NULL CHECK (width_start_nm > 0),
    width_end_nm INTEGER NOT NULL CHECK (width_end_nm > 0),
    thickness_nm INTEGER NOT NULL CHECK (thickness_nm > 0),
    edge TEXT NOT NULL,
    reach_nm INTEGER NOT NULL CHECK (reach_nm >= 0),
    flaws TEXT NOT NULL CHECK (json_valid(flaws)),
    lot TEXT NOT NULL,
    species TEXT NOT NULL,
    tone TEXT NOT NULL,
    note TEXT NOT NULL,
    moisture_pct REAL,
    nails TEXT,
    treatment TEXT NOT NULL,
    untreated INTEGER NOT NULL,
    PRIMARY KEY (job_id, id)
) STRICT;

-- A tally is always read whole and in order.
CREATE INDEX board_by_place ON board (job_id, place);

CREATE TABLE mark (
    job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    number INTEGER NOT NULL,
    text TEXT NOT NULL CHECK (json_valid(text)),
    PRIMARY KEY (job_id, number)
) STRICT;

CREATE TABLE layout (
    id INTEGER PRIMARY KEY AUTOINCREMENT, -- An address must never lead to another one later.
    job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    at TEXT NOT NULL,
    made TEXT NOT NULL,
    text TEXT NOT NULL CHECK (json_valid(text)),
    pieces INTEGER NOT NULL,
    answer TEXT CHECK (answer IS NULL OR json_valid(answer)),
    news TEXT NOT NULL CHECK (json_valid(news)),
    minds TEXT NOT NULL CHECK (json_valid(minds))
) STRICT;

CREATE INDEX layout_by_job ON layout (job_id);

CREATE TABLE search (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    made TEXT NOT NULL,
    effort TEXT NOT NULL,
    seed INTEGER NOT NULL,
    state TEXT NOT NULL,
    stage TEXT NOT NULL,
    done REAL NOT NULL,
    told TEXT NOT NULL,
    best TEXT CHECK (best IS NULL OR json_valid(best)),
    layout_id INTEGER REFERENCES layout (id),
    trouble TEXT NOT NULL,
    wishes TEXT NOT NULL,
    begun_at TEXT NOT NULL,
    ended_at TEXT NOT NULL
) STRICT;

CREATE INDEX search_by_job ON search (job_id);

-- A step taken with a job, told by what is different: enough to take it back, and to take it again.
CREATE TABLE step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    at TEXT NOT NULL,
    what TEXT NOT NULL,
    -- Of whoever may ask twice for the same step, since the first answer was lost on the way.
    key TEXT,
    before TEXT NOT NULL CHECK (json_valid(before)),
    after TEXT NOT NULL CHECK (json_valid(after)),
    taken_back INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE INDEX step_by_job ON step (job_id);
CREATE UNIQUE INDEX step_by_key ON step (job_id, key) WHERE key IS NOT NULL;

-- What holds for all jobs, such as the word by which phones are let in.
CREATE TABLE setting (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
"""

MIGRATIONS = (FIRST,)
"""What makes a file of each version out of one of the version before; the first out of an empty file."""

VERSION = len(MIGRATIONS)
"""Of a file of today."""
