"""Catalogues whose truth is known, asked through the shipped arithmetic: how often each verdict is right.

Run: ``python -m bench.calibration`` from the checkout; ``--help`` says what can be chosen.
"""
