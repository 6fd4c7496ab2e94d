"""Job folders, tallies, layouts and cut lists on disk: read whole or refused with every reason."""

from plankwright.files.cut_list import cut_list_csv, cut_list_xlsx
from plankwright.files.disk import demand_writable, write_files
from plankwright.files.job import JobReading, read_job
from plankwright.files.job_definition import (
    DefinitionReading,
    definition_of,
    definition_toml,
    read_definition,
    rewritten,
    rule_meanings,
    settled,
)
from plankwright.files.layout_json import layout_from_json, layout_to_json, read_layout
from plankwright.files.tally import TallyReading, read_tally
from plankwright.files.tally_csv import tally_csv
from plankwright.files.template import example_folder, write_template
from plankwright.files.work_json import (
    mark_from_json,
    mark_to_json,
    read_work,
    work_to_json,
    write_work,
)

__all__ = [
    "DefinitionReading",
    "JobReading",
    "TallyReading",
    "cut_list_csv",
    "cut_list_xlsx",
    "definition_of",
    "definition_toml",
    "demand_writable",
    "example_folder",
    "layout_from_json",
    "layout_to_json",
    "mark_from_json",
    "mark_to_json",
    "read_definition",
    "read_job",
    "read_layout",
    "read_tally",
    "read_work",
    "rewritten",
    "rule_meanings",
    "settled",
    "tally_csv",
    "work_to_json",
    "write_files",
    "write_template",
    "write_work",
]
