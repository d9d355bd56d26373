"""Inputs by the hundred thousand, made up from sound ones: nothing may fall over, hang or say two things."""
