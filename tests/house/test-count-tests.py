# SPDX-License-Identifier: GPL-3.0-or-later
"""What counts as passed, failed and skipped, and when the count itself is a failure."""

import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

COUNT = pathlib.Path(__file__).resolve().parents[2] / "build-aux" / "count-tests"


def count(*tests):
    """Runs the counter over one build folder with @tests, or over one without a log if there are none."""
    with tempfile.TemporaryDirectory() as folder:
        if tests:
            log = pathlib.Path(folder, "meson-logs", "testlog.json")
            log.parent.mkdir()
            log.write_text("\n".join(json.dumps(test) for test in tests), encoding="utf-8")
        result = subprocess.run([sys.executable, COUNT, folder], capture_output=True, text=True, check=False)
        return result.stdout.splitlines()[-1], result.returncode


class CountTest(unittest.TestCase):
    def test_plain_programs(self):
        self.assertEqual(count({"result": "OK"}), ("1 passed, 0 failed, 0 skipped", 0))
        self.assertEqual(count({"result": "FAIL"}, {"result": "OK"}), ("1 passed, 1 failed, 0 skipped", 1))
        self.assertEqual(count({"result": "TIMEOUT", "stdout": "half a li"}), ("0 passed, 1 failed, 0 skipped", 1))

    def test_nothing_passed(self):
        self.assertEqual(count({"result": "SKIP"}), ("0 passed, 0 failed, 1 skipped", 1))
        self.assertEqual(count(), ("0 passed, 1 failed, 0 skipped", 1))

    def test_tap(self):
        output = "1..3\nok 1 /a\n# ok then\nnot ok 2 /b\nok 3 /c # SKIP no such thing\n"
        self.assertEqual(count({"result": "FAIL", "stdout": output}), ("1 passed, 1 failed, 1 skipped", 1))

    def test_sums_of_nested_tap_are_not_counted(self):
        output = "# Subtest: a\n    ok 1 /a/one\n    ok 2 /a/two\n    1..2\nok 1 a\nok 2 /b\n1..2\n"
        self.assertEqual(count({"result": "OK", "stdout": output}), ("3 passed, 0 failed, 0 skipped", 0))

    def test_death_after_good_lines(self):
        self.assertEqual(count({"result": "ERROR", "stdout": "ok 1 /a\n"}), ("1 passed, 1 failed, 0 skipped", 1))


unittest.main()
