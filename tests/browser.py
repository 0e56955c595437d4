"""Debian's Chromium, as a reader uses it: for pages that have a script."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final, Literal

import pytest
from selenium.common.exceptions import TimeoutException
from selenium.webdriver import Chrome, ChromeOptions
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.support.wait import WebDriverWait

AXE: Final = Path(sys.prefix) / "axe-core" / "axe.min.js"
"""The rules for accessible pages, which .ci/setup fetches."""

_PROGRAM: Final = Path("/usr/bin/chromium")
_DRIVER: Final = Path("/usr/bin/chromedriver")
_FLAGS: Final = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
)  # fmt: skip
_SECONDS: Final = 120
_PATIENCE: Final = 10.0


class Browser:
    """One window, with nothing remembered."""

    def __init__(self, driver: Chrome) -> None:
        self.driver = driver

    def see(
        self, page: Path, scheme: Literal["light", "dark"] = "light", width: int = 1280
    ) -> None:
        """Opens a file anew; width in pixels."""
        size = {"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": False}
        self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", size)
        features = [{"name": "prefers-color-scheme", "value": scheme}]
        self.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": features})
        self.driver.get("about:blank")
        self.driver.get(page.as_uri())
        # On a busy machine this comes back before the end of the page has been read.
        self.expect("[location.href, document.readyState]", [page.as_uri(), "complete"])

    def ask(self, script: str) -> Any:
        """What an expression of JavaScript comes to."""
        return self.driver.execute_script(f"return {script}")

    def expect(self, script: str, value: object) -> None:
        """Waits for what the page does in its own time; fails where it does not."""
        with suppress(TimeoutException):
            wait: WebDriverWait[Chrome] = WebDriverWait(self.driver, _PATIENCE, 0.05)
            wait.until(lambda _: self.ask(script) == value)
        assert self.ask(script) == value

    def press(self, *keys: str) -> None:
        """Keys, one after the other, to whatever has the focus."""
        ActionChains(self.driver).send_keys(*keys).perform()

    def press_until(self, found: str, key: str = Keys.TAB, most: int = 200) -> None:
        """A key, until the element in focus is as a CSS selector says."""
        for _ in range(most):
            self.press(key)
            if self.ask(f"document.activeElement.matches('{found}')"):
                return
        pytest.fail(f"{found} is not reached in {most} steps")

    def clipboard(self) -> str:
        """What was copied."""
        granted = {"permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"]}
        self.driver.execute_cdp_cmd("Browser.grantPermissions", granted)
        read = (
            "navigator.clipboard.readText().then(arguments[0], (error) => arguments[0](`${error}`))"
        )
        return str(self.driver.execute_async_script(read))

    def findings(self) -> list[tuple[str, str]]:
        """What axe-core has against the page as it is shown: rule and element."""
        self.driver.execute_script(AXE.read_text("utf-8"))
        found = self.driver.execute_async_script(
            "axe.run({resultTypes: ['violations']}).then((all) => arguments[0](all.violations))"
        )
        return [(rule["id"], node["html"]) for rule in found for node in rule["nodes"]]


@contextmanager
def browser() -> Iterator[Browser]:
    """A browser of its own, which is ended with the block."""
    with TemporaryDirectory(prefix="probgen-browser-", ignore_cleanup_errors=True) as folder:
        options = ChromeOptions()
        options.binary_location = str(_PROGRAM)
        for flag in (*_FLAGS, f"--user-data-dir={folder}"):
            options.add_argument(flag)
        service = Service(str(_DRIVER), env={**os.environ, "HOME": folder})
        driver = Chrome(options=options, service=service)
        driver.set_script_timeout(_SECONDS)
        try:
            yield Browser(driver)
        finally:
            driver.quit()
