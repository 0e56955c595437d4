"""`python -m probgen` is the same as `probgen`."""

from probgen.cli import main

if __name__ == "__main__":
    main()
