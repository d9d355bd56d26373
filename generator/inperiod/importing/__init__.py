"""Spreadsheets into records, and a new folder to start from."""

from inperiod.importing.new_folder import FolderInUse, new_folder
from inperiod.importing.table_import import CannotImport, ImportReport, RowReport, import_table

__all__ = ["CannotImport", "FolderInUse", "ImportReport", "RowReport", "import_table", "new_folder"]
