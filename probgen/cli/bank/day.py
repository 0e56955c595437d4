"""How a day is typed: 2027-08-15."""

from __future__ import annotations

from typing import Final

import click

DAY: Final = click.DateTime(formats=["%Y-%m-%d"])
