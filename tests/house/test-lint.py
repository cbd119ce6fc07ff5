# SPDX-License-Identifier: GPL-3.0-or-later
"""The lint finds each sin that it is there for, and nothing in a small clean house."""

import pathlib
import subprocess
import sys
import tempfile
import unittest

LINT = pathlib.Path(__file__).resolve().parents[2] / "build-aux" / "lint"
SPDX = "/* SPDX-License-Identifier: GPL-3.0-or-later */\n"

CLEAN = {
    "src/model/meson.build": "files(\n  'bb-a.c',\n  'bb-b.c',\n)\n",
    "src/model/bb-a.h": SPDX + "#pragma once\n\nint bb_a_count (void);\n",
    "src/model/bb-a.c": SPDX + "/**\n * bb_a_count:\n *\n * Returns: one\n */\nint\nbb_a_count (void)\n{\n  return 1;\n}\n",
    "src/model/bb-b.c": SPDX + '/* One may SELECT a blank FROM a list. */\nstatic const char *b = "Select one from the list.";\n',
    "src/app/meson.build": "files('bb-page.c')\n",
    "src/app/bb-page.c": SPDX + "#include <gtk/gtk.h>\n",
    "src/store/bb-book.c": SPDX + '#include <sqlite3.h>\nstatic const char *q = "SELECT a FROM b";\n',
    "README.md": "See [the list](ui/menus.ui#top) and https://example.org/.\n",
    "ui/bb-page.ui": '<template class="BbPage"/>\n',
    "ui/menus.ui": "<interface/>\n",
    "ui/blankbook.gresource.xml": "<file>bb-page.ui</file>\n<file>menus.ui</file>\n",
}

DROP_DOWN = """<interface>
  <template class="BbPage" parent="AdwBin">
    <object class="%s" id="paper_drop">
      <accessibility>
        <property name="%s">Paper</property>
      </accessibility>
    </object>
  </template>
</interface>
"""

SINS = {
    "no SPDX line": {"src/model/bb-b.c": "int b;\n"},
    "lacks #pragma once": {"src/model/bb-a.h": SPDX},
    "more than 600 lines": {"src/model/bb-b.c": SPDX + "int b;\n" * 600},
    "more than 120 columns": {"src/model/bb-b.c": SPDX + "/*" + "-" * 120 + "*/\n"},
    "tab or space": {"src/model/bb-b.c": SPDX + "int b; \n"},
    "function of more than 50 lines": {"src/model/bb-b.c": SPDX + "{\n" + "  ;\n" * 51 + "}\n"},
    "toolkit below src/app": {"src/model/bb-b.c": SPDX + "#include <gtk/gtk.h>\n"},
    "SQLite outside src/store": {"src/model/bb-b.c": SPDX + "#include <sqlite3.h>\n"},
    "SQL outside src/store": {"src/app/bb-page.c": SPDX + 'char *q = "SELECT a FROM b";\n'},
    "logs without": {"src/model/bb-b.c": SPDX + 'int f (void) { g_warning ("x"); }\n'},
    "declares bb_a_other": {"src/model/bb-a.h": SPDX + "#pragma once\nchar *bb_a_other (int      a,\n   int b);\n"},
    "unfinished": {"src/model/bb-b.c": SPDX + "/* TO" + "DO */\n"},
    "folder of one machine": {"DEVELOPERS.md": "See /ho" + "me/somebody.\n"},
    "how the project is run": {"DEVELOPERS.md": "See iss" + "ue 12.\n"},
    "links to shown.png": {"README.md": "![A picture](shown.png)\n"},
    "not sorted": {"src/model/meson.build": "files(\n  'bb-b.c',\n  'bb-a.c',\n)\n"},
    "is not in src/model/meson.build": {"src/model/bb-c.c": SPDX},
    "no resource bundle": {"ui/bb-other.ui": "<interface/>\n", "src/app/bb-other.c": SPDX},
    "has no src/app/bb-lonely.c": {"ui/bb-lonely.ui": '<template class="BbLonely"/>\n'},
    "names the drop-down paper_drop": {"ui/bb-page.ui": DROP_DOWN % ("GtkDropDown", "label")},
}


def lint(files):
    with tempfile.TemporaryDirectory() as folder:
        for name, text in files.items():
            path = pathlib.Path(folder, name)
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        return subprocess.run([sys.executable, LINT, folder], capture_output=True, text=True, check=False)


class LintTest(unittest.TestCase):
    def test_clean_house(self):
        result = lint(CLEAN)
        self.assertEqual((result.returncode, result.stdout, result.stderr), (0, "", ""))

    def test_named_otherwise(self):
        for widget, what in (("GtkDropDown", "description"), ("GtkListBox", "label")):
            with self.subTest(widget):
                result = lint(CLEAN | {"ui/bb-page.ui": DROP_DOWN % (widget, what)})
                self.assertEqual((result.returncode, result.stdout, result.stderr), (0, "", ""))

    def test_sins(self):
        for what, files in SINS.items():
            with self.subTest(what):
                result = lint(CLEAN | files)
                self.assertEqual(result.returncode, 1)
                self.assertIn(what, result.stdout)


unittest.main()
