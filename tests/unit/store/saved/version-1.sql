PRAGMA application_id = 1347178059;
PRAGMA user_version = 1;
BEGIN TRANSACTION;
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
INSERT INTO "board" VALUES('hall','A',0,2463800000,133350000,133350000,19050000,'square',0,'[]','','','','',NULL,NULL,'none',0);
INSERT INTO "board" VALUES('hall','B',1,2463800000,133350000,133350000,19050000,'square',0,'[]','','','','',NULL,NULL,'none',0);
INSERT INTO "board" VALUES('hall','C',2,2463800000,133350000,133350000,19050000,'square',0,'[]','','','','',NULL,NULL,'none',0);
INSERT INTO "board" VALUES('hall','Säle 3',3,2463800000,133350000,127000000,19050000,'shiplap',6350000,'[{"start_nm": 76200000, "end_nm": 228600000, "what": "rot", "severity": "lost", "face": null}, {"start_nm": 508000000, "end_nm": 609600000, "what": "stain", "severity": "blemish", "face": "front"}]','stage','spruce','dark','left of the door; “old”',11.5,'pulled','none',1);
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
INSERT INTO "job" VALUES('hall','{"name": "village hall", "units": "inches", "surface": [{"id": "wall", "kind": "wall", "width": "8'' 0\"", "height": "10\"", "framing": {"solid": true}}], "rules": {"expansion_gap": "0\""}}',1,'["A", "B", "C"]','{"kept": [["wall", "2a", "B"]], "put": [], "without": ["C"]}',1,'2026-11-27T22:20:05.843444+00:00',NULL);
INSERT INTO "job" VALUES('away','{"name": "porch", "units": "inches", "surface": []}',NULL,NULL,NULL,0,'2026-11-27T22:20:05.939554+00:00','2026-11-27T22:20:05.958959+00:00');
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
INSERT INTO "layout" VALUES(1,'hall','2026-11-27T22:20:05.734949+00:00','searched','{
  "format": "plankwright layout",
  "version": 1,
  "job": "village hall",
  "seed": 0,
  "effort": "",
  "surfaces": [
    {
      "surface": "wall",
      "courses": [
        {
          "number": 1,
          "from": "0 mm",
          "to": "127 mm",
          "pieces": [
            {
              "label": "1a",
              "board": "A",
              "place": {"left": "0 mm", "bottom": "0 mm", "right": "2438.4 mm", "top": "127 mm"},
              "along": ["12.7 mm", "2451.1 mm"],
              "across": ["3.175 mm", "130.175 mm"],
              "face": "front",
              "turned": false,
              "near": "as found",
              "far": "as found",
              "shim": "0 mm",
              "nails": []
            }
          ]
        },
        {
          "number": 2,
          "from": "127 mm",
          "to": "254 mm",
          "pieces": [
            {
              "label": "2a",
              "board": "B",
              "place": {"left": "0 mm", "bottom": "127 mm", "right": "2438.4 mm", "top": "254 mm"},
              "along": ["12.7 mm", "2451.1 mm"],
              "across": ["3.175 mm", "130.175 mm"],
              "face": "front",
              "turned": false,
              "near": "as found",
              "far": "as found",
              "shim": "0 mm",
              "nails": []
            }
          ]
        }
      ],
      "bare": [],
      "score": {"bare": "0 mm²", "joints_in_sight": 0, "wood_spent": "657095.46 mm²", "cuts": 0},
      "bound": {"bare": "0 mm²", "joints_in_sight": 0, "wood_spent": "0 mm²"}
    }
  ]
}
',2,'{"verdict":"enough","headline":"Enough: a layout was found that covers wall.","surfaces":[{"surface_id":"wall","verdict":"enough","to_cover_nm2":619353600000000000,"score":{"bare_nm2":0,"joints_in_sight":0,"wood_spent_nm2":657095460000000000,"cuts":0},"bound":{"bare_nm2":0,"joints_in_sight":0,"wood_spent_nm2":0},"sentences":["all 6.7 sq ft covered.","No joint is in sight.","Wood spent: 7.1 sq ft."]}],"untouched":["C"],"held_back":[],"offcuts":0,"wanted":[],"wanted_closes":false,"pile":["Spare: one whole board, C (8'' 0\" × 5\")."],"stopped":false}','[]','["A rip is narrow."]');
INSERT INTO "layout" VALUES(2,'hall','2026-11-27T22:20:05.739342+00:00','again','{
  "format": "plankwright layout",
  "version": 1,
  "job": "village hall",
  "seed": 0,
  "effort": "",
  "surfaces": [
    {
      "surface": "wall",
      "courses": [
        {
          "number": 1,
          "from": "0 mm",
          "to": "127 mm",
          "pieces": [
            {
              "label": "1a",
              "board": "A",
              "place": {"left": "0 mm", "bottom": "0 mm", "right": "2438.4 mm", "top": "127 mm"},
              "along": ["12.7 mm", "2451.1 mm"],
              "across": ["3.175 mm", "130.175 mm"],
              "face": "front",
              "turned": false,
              "near": "as found",
              "far": "as found",
              "shim": "0 mm",
              "nails": []
            }
          ]
        }
      ],
      "bare": [{"left": "0 mm", "bottom": "127 mm", "right": "2438.4 mm", "top": "254 mm"}],
      "score": {"bare": "309676.8 mm²", "joints_in_sight": 0, "wood_spent": "328547.73 mm²", "cuts": 0},
      "bound": {"bare": "309676.8 mm²", "joints_in_sight": 0, "wood_spent": "0 mm²"}
    }
  ]
}
',1,'{"verdict":"not enough","headline":"Not enough: no layout of this pile covers all of wall.","surfaces":[{"surface_id":"wall","verdict":"not enough","to_cover_nm2":619353600000000000,"score":{"bare_nm2":309676800000000000,"joints_in_sight":0,"wood_spent_nm2":328547730000000000,"cuts":0},"bound":{"bare_nm2":309676800000000000,"joints_in_sight":0,"wood_spent_nm2":0},"sentences":["3.3 sq ft of 6.7 sq ft covered (50 %).","3.3 sq ft stays bare, and no layout can leave less: proven best.","No joint is in sight.","Wood spent: 3.5 sq ft."]}],"untouched":["B","C"],"held_back":[],"offcuts":0,"wanted":[{"count":1,"length_nm":2463800000,"width_nm":133350000,"thickness_nm":null,"profile":null}],"wanted_closes":true,"pile":["Wanted to close what is bare, as they come, before trimming:","- 1 board of at least 8'' 1\" by 5-1/4\"","A layout with these boards was made, and it covers everything.","Not used: two whole boards, B and C."],"stopped":false}','["Piece 2a is gone."]','[]');
CREATE TABLE mark (
    job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
    number INTEGER NOT NULL,
    text TEXT NOT NULL CHECK (json_valid(text)),
    PRIMARY KEY (job_id, number)
) STRICT;
INSERT INTO "mark" VALUES('hall',0,'{"mark": "hung", "what": "1", "hung": [{"surface": "wall", "course": {"number": 1, "from": "0 mm", "to": "127 mm", "pieces": [{"label": "1a", "board": "A", "place": {"left": "0 mm", "bottom": "0 mm", "right": "2438.4 mm", "top": "127 mm"}, "along": ["12.7 mm", "2451.1 mm"], "across": ["3.175 mm", "130.175 mm"], "face": "front", "turned": false, "near": "as found", "far": "as found", "shim": "0 mm", "nails": []}]}}], "boards": [{"board": "A", "left": []}]}');
INSERT INTO "mark" VALUES('hall',1,'{"mark": "cut", "what": "2a", "cut": [{"surface": "wall", "piece": {"label": "2a", "board": "B", "place": {"left": "0 mm", "bottom": "127 mm", "right": "2438.4 mm", "top": "254 mm"}, "along": ["12.7 mm", "2451.1 mm"], "across": ["3.175 mm", "130.175 mm"], "face": "front", "turned": false, "near": "as found", "far": "as found", "shim": "0 mm", "nails": []}, "plain": false}], "boards": [{"board": "B", "left": []}]}');
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
INSERT INTO "search" VALUES(1,'hall','searched','steady',3,'done','by patterns',0.5,'all covered','{
  "format": "plankwright layout",
  "version": 1,
  "job": "village hall",
  "seed": 0,
  "effort": "",
  "surfaces": [
    {
      "surface": "wall",
      "courses": [
        {
          "number": 1,
          "from": "0 mm",
          "to": "127 mm",
          "pieces": [
            {
              "label": "1a",
              "board": "A",
              "place": {"left": "0 mm", "bottom": "0 mm", "right": "2438.4 mm", "top": "127 mm"},
              "along": ["12.7 mm", "2451.1 mm"],
              "across": ["3.175 mm", "130.175 mm"],
              "face": "front",
              "turned": false,
              "near": "as found",
              "far": "as found",
              "shim": "0 mm",
              "nails": []
            }
          ]
        },
        {
          "number": 2,
          "from": "127 mm",
          "to": "254 mm",
          "pieces": [
            {
              "label": "2a",
              "board": "B",
              "place": {"left": "0 mm", "bottom": "127 mm", "right": "2438.4 mm", "top": "254 mm"},
              "along": ["12.7 mm", "2451.1 mm"],
              "across": ["3.175 mm", "130.175 mm"],
              "face": "front",
              "turned": false,
              "near": "as found",
              "far": "as found",
              "shim": "0 mm",
              "nails": []
            }
          ]
        }
      ],
      "bare": [],
      "score": {"bare": "0 mm²", "joints_in_sight": 0, "wood_spent": "657095.46 mm²", "cuts": 0},
      "bound": {"bare": "0 mm²", "joints_in_sight": 0, "wood_spent": "0 mm²"}
    }
  ]
}
',1,'','','2026-11-27T22:20:05.859050+00:00','2026-11-27T22:20:05.895358+00:00');
INSERT INTO "search" VALUES(2,'hall','around','90s',0,'running','',0.0,'',NULL,NULL,'','{"kept": [["wall", "2a", "B"]], "put": [], "without": ["C"]}','2026-11-27T22:20:05.919049+00:00','');
CREATE TABLE setting (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
INSERT INTO "setting" VALUES('word','let-me-in');
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
INSERT INTO "step" VALUES(1,'hall','2026-11-27T22:20:05.770355+00:00','board Säle 3 added','phone-1','{"board Säle 3": null}','{"board Säle 3": {"id": "Säle 3", "length_nm": 2463800000, "width_start_nm": 133350000, "width_end_nm": 127000000, "thickness_nm": 19050000, "edge": "shiplap", "reach_nm": 6350000, "flaws": "[{\"start_nm\": 76200000, \"end_nm\": 228600000, \"what\": \"rot\", \"severity\": \"lost\", \"face\": null}, {\"start_nm\": 508000000, \"end_nm\": 609600000, \"what\": \"stain\", \"severity\": \"blemish\", \"face\": \"front\"}]", "lot": "stage", "species": "spruce", "tone": "dark", "note": "left of the door; “old”", "moisture_pct": 11.5, "nails": "pulled", "treatment": "none", "untreated": 1, "place": 3}}',0);
INSERT INTO "step" VALUES(2,'hall','2026-11-27T22:20:05.780443+00:00','laid out',NULL,'{"layout_id": null}','{"layout_id": 1}',0);
INSERT INTO "step" VALUES(3,'hall','2026-11-27T22:20:05.795781+00:00','wished',NULL,'{"wishes": null}','{"wishes": "{\"kept\": [[\"wall\", \"2a\", \"B\"]], \"put\": [], \"without\": [\"C\"]}"}',0);
INSERT INTO "step" VALUES(4,'hall','2026-11-27T22:20:05.807587+00:00','course 1 hung',NULL,'{"begun_with": null, "mark 0": null, "mark 1": null}','{"begun_with": ["A", "B", "C"], "mark 0": "{\"mark\": \"hung\", \"what\": \"1\", \"hung\": [{\"surface\": \"wall\", \"course\": {\"number\": 1, \"from\": \"0 mm\", \"to\": \"127 mm\", \"pieces\": [{\"label\": \"1a\", \"board\": \"A\", \"place\": {\"left\": \"0 mm\", \"bottom\": \"0 mm\", \"right\": \"2438.4 mm\", \"top\": \"127 mm\"}, \"along\": [\"12.7 mm\", \"2451.1 mm\"], \"across\": [\"3.175 mm\", \"130.175 mm\"], \"face\": \"front\", \"turned\": false, \"near\": \"as found\", \"far\": \"as found\", \"shim\": \"0 mm\", \"nails\": []}]}}], \"boards\": [{\"board\": \"A\", \"left\": []}]}", "mark 1": "{\"mark\": \"cut\", \"what\": \"2a\", \"cut\": [{\"surface\": \"wall\", \"piece\": {\"label\": \"2a\", \"board\": \"B\", \"place\": {\"left\": \"0 mm\", \"bottom\": \"127 mm\", \"right\": \"2438.4 mm\", \"top\": \"254 mm\"}, \"along\": [\"12.7 mm\", \"2451.1 mm\"], \"across\": [\"3.175 mm\", \"130.175 mm\"], \"face\": \"front\", \"turned\": false, \"near\": \"as found\", \"far\": \"as found\", \"shim\": \"0 mm\", \"nails\": []}, \"plain\": false}], \"boards\": [{\"board\": \"B\", \"left\": []}]}"}',0);
INSERT INTO "step" VALUES(5,'hall','2026-11-27T22:20:05.828052+00:00','another layout',NULL,'{"layout_id": 1}','{"layout_id": 2}',1);
CREATE INDEX board_by_place ON board (job_id, place);
CREATE INDEX layout_by_job ON layout (job_id);
CREATE INDEX search_by_job ON search (job_id);
CREATE INDEX step_by_job ON step (job_id);
CREATE UNIQUE INDEX step_by_key ON step (job_id, key) WHERE key IS NOT NULL;
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('layout',2);
INSERT INTO "sqlite_sequence" VALUES('step',5);
INSERT INTO "sqlite_sequence" VALUES('search',2);
COMMIT;
