"""How reading, answering and building grow with the catalogue, as ratios within one run.

``python -m bench.scale --help`` says what can be measured.
"""
