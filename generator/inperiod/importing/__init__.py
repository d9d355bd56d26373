"""Spreadsheets into records, and a new folder to start from."""

from inperiod.importing.manifest import ManifestReport, import_manifest, is_manifest
from inperiod.importing.new_folder import FolderInUse, new_folder
from inperiod.importing.table_import import CannotImport, ImportReport, RowReport, import_table

__all__ = [
    "CannotImport",
    "FolderInUse",
    "ImportReport",
    "ManifestReport",
    "RowReport",
    "import_manifest",
    "import_table",
    "is_manifest",
    "new_folder",
]
