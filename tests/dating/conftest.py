"""Property tests here count cases, not milliseconds: the machine that decides may be a slow one."""

from hypothesis import settings

settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")
