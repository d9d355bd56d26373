"""Plan pages, render them, give the browser its data, write the site in one step, serve it on this
machine."""

from inperiod.publishing.build import BuildReport, build, watched_folders
from inperiod.publishing.serve import serve
from inperiod.publishing.write import WillNotWrite

__all__ = ["BuildReport", "WillNotWrite", "build", "serve", "watched_folders"]
