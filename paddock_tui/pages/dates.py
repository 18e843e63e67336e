"""Dates as pages write them."""

import datetime as dt


def short_date(day: dt.date) -> str:
    """Write a date as '12 May', in English whatever the locale."""
    months = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
    return f"{day.day} {months[day.month - 1]}"
