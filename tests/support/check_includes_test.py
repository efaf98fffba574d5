#!/usr/bin/env python3
"""The include check must object to each kind of wrong include, and to nothing else."""
import pathlib
import tempfile
import unittest

import check_includes


def complaints(name, text):
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        path = root / name
        path.parent.mkdir(parents=True)
        path.write_text(text, encoding="utf-8")
        return check_includes.check(root)[0]


class Arrows(unittest.TestCase):
    def test_along_a_chain(self):
        self.assertEqual([], complaints("core/rules/A.cpp", '#include "geometry/Point.h"\n'))

    def test_against_the_chain(self):
        self.assertEqual(1, len(complaints("core/plan/A.h", '#include "siting/Study.h"\n')))

    def test_nobody_but_main_includes_window_and_cli(self):
        self.assertEqual(1, len(complaints("app/window/A.cpp", '#include "cli/CommandLine.h"\n')))
        self.assertEqual([], complaints("app/main.cpp", '#include "window/A.h"\n'))

    def test_include_without_a_folder(self):
        self.assertEqual(1, len(complaints("core/plan/A.cpp", '#include "Plan.h"\n')))

    def test_unknown_folder(self):
        self.assertEqual(1, len(complaints("core/newcomer/A.cpp", "")))


class Libraries(unittest.TestCase):
    def test_no_qt_in_core_and_tools(self):
        self.assertEqual(1, len(complaints("core/plan/A.cpp", "#include <QString>\n")))
        self.assertEqual(1, len(complaints("app/tools/A.cpp", "#include <QtGlobal>\n")))
        self.assertEqual([], complaints("app/files/A.cpp", "#include <QFile>\n"))

    def test_boost_geometry_stays_behind_geometry(self):
        line = "#include <boost/geometry.hpp>\n"
        self.assertEqual([], complaints("core/geometry/A.cpp", line))
        self.assertEqual(1, len(complaints("core/geometry/A.h", line)))
        self.assertEqual(1, len(complaints("core/plan/A.cpp", line)))

    def test_eigen_stays_behind_suction(self):
        line = "#include <Eigen/SparseCholesky>\n"
        self.assertEqual([], complaints("core/suction/A.cpp", line))
        self.assertEqual(1, len(complaints("core/suction/A.h", line)))
        self.assertEqual(1, len(complaints("core/plan/A.cpp", line)))

    def test_json_only_in_sources(self):
        self.assertEqual(1, len(complaints("core/plan/A.h", "#include <nlohmann/json.hpp>\n")))
        self.assertEqual([], complaints("core/plan/A.cpp", "#include <nlohmann/json.hpp>\n"))
        self.assertEqual([], complaints("app/cli/A.h", "#include <nlohmann/json_fwd.hpp>\n"))


if __name__ == "__main__":
    unittest.main()
