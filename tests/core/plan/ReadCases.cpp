#include "core/plan/JobCases.h"
#include "plan/JobText.h"

namespace sumpwright::plan {

namespace {

std::string nested(int levels) {
  const auto n = static_cast<std::size_t>(levels);
  return std::string(n, '[') + std::string(n, ']');
}

std::string list(const std::string& element, int count) {
  std::string text = element;
  for (int i = 1; i < count; ++i) text += "," + element;
  return "[" + text + "]";
}

const std::string kOpening = R"("id":"o","kind":"door","edge":0,"offset_m":1,"width_m":1)";

std::string opening(const std::string& fields) {
  return jobText("", R"(,"openings":[{)" + fields + "}]");
}

}  // namespace

std::string jobText(const std::string& more, const std::string& plan) {
  return R"({"format":"sumpwright.job","version":1,"id":"j",)"
         R"("plan":{"rings":[{"corners_m":[[0,0],[9,0],[9,6],[0,6]]}])" +
         plan + "}" + more + "}";
}

std::vector<ReadCase> unreadableCases() {
  const std::string head = R"({"format":"sumpwright.job","version":1,"id":"j")";
  return {
      {"job.not-json", "", ""},
      {"job.not-json", "", "not a job"},
      {"job.not-json", "/id", R"({"format":"sumpwright.job","version":1,"id":)"},
      {"job.not-json", "", jobText() + "x"},
      {"job.not-json", "", jobText() + std::string(1, '\0')},
      {"job.not-json", "", jobText() + std::string(1, '\0') + "x"},
      {"job.not-json", "", std::string(1, '\0') + jobText()},
      {"job.not-json", "", jobText() + "\n" + jobText()},
      {"job.not-json", "/plan/rings/1", R"({"plan":{"rings":[1,}})"},
      {"job.too-large", "", std::string(kMaxJobBytes + 1, ' ')},
      {"job.text.not-utf8", "", head + ",\"notes\":\"\xC3\x28\"}"},
      {"job.text.not-utf8", "", head + ",\"notes\":\"\xED\xA0\x80\"}"},  // a lone surrogate
      {"job.too-deep",
       "/x_" +
           [] {
             std::string pointer;
             for (int i = 0; i < kMaxJobDepth - 1; ++i) pointer += "/0";
             return pointer;
           }(),
       head + ",\"x_\":" + nested(kMaxJobDepth) + "}"},
      {"job.key.twice", "/id", R"({"format":"sumpwright.job","version":1,"id":"a","id":"b"})"},
      {"job.number.not-finite", "/plan/x_a/1/b", jobText("", R"(,"x_a":[{},{"b":nan}])")},
      {"job.key.twice", "/plan/openings/0/kind", opening(kOpening + R"(,"kind":{"a":[1]})")},
      {"job.text.too-long", "/notes",
       head + ",\"notes\":\"" + std::string(1024 * 1024 + 1, 'a') + "\"}"},
      {"job.text.control", "/notes", head + R"(,"notes":"a\u0000b"})"},
      {"job.text.control", "/notes", head + R"(,"notes":"a\uFFFFb"})"},
      {"job.number.not-finite", "/plan/north_deg", R"({"plan":{"north_deg":NaN}})"},
      {"job.number.not-finite", "/plan/north_deg", R"({"plan":{"north_deg":-Infinity}})"},
      {"job.number.not-finite", "/plan/rings/0/corners_m/1/0",
       R"({"plan":{"rings":[{"corners_m":[[0,0],[1e999,0]]}]}})"},
      {"job.number.range", "/plan/openings/0/offset_m",
       opening(R"("id":"o","kind":"door","edge":0,"offset_m":1e300,"width_m":1)")},
      {"job.number.range", "/plan/openings/0/edge",
       opening(R"("id":"o","kind":"door","edge":-1,"offset_m":1,"width_m":1)")},
      {"job.number.range", "/plan/openings/0/storey", opening(kOpening + R"(,"storey":1000)")},
      {"job.number.range", "/plan/test_holes/0/at_m/1",
       jobText("", R"(,"test_holes":[{"id":"t","at_m":[1,10001]}])")},
      {"job.number.range", "/house/year_built", jobText(R"(,"house":{"year_built":99999})")},
      {"job.number.range", "/design/core_mm", jobText(R"(,"design":{"core_mm":1e6})")},
      {"job.number.range", "/plan/north_deg", jobText("", R"(,"north_deg":1e5)")},
      {"job.type", "", "[]"},
      {"job.type", "", "null"},
      {"job.type", "/version", R"({"format":"sumpwright.job","version":"1","id":"a"})"},
      {"job.type", "/id", R"({"format":"sumpwright.job","version":1,"id":7})"},
      {"job.type", "/house", jobText(R"(,"house":[])")},
      {"job.type", "/photos", jobText(R"(,"photos":"a.jpg")")},
      {"job.type", "/photos/1", jobText(R"(,"photos":["a.jpg",2])")},
      {"job.type", "/plan/openings/0/kind",
       opening(R"("id":"o","kind":3,"edge":0,"offset_m":1,"width_m":1)")},
      {"job.type", "/plan/openings/0/width_m",
       opening(R"("id":"o","kind":"door","edge":0,"offset_m":1,"width_m":"1")")},
      {"job.type", "/plan/openings/0/sill_m", opening(kOpening + R"(,"sill_m":null)")},
      {"job.type", "/plan/openings/0/storey", opening(kOpening + R"(,"storey":0.5)")},
      {"job.type", "/plan/openings/0", jobText("", R"(,"openings":[7])")},
      {"job.type", "/plan/test_holes/0/at_m",
       jobText("", R"(,"test_holes":[{"id":"t","at_m":[1,2,3]}])")},
      {"job.type", "/plan/test_holes/0/at_m/0",
       jobText("", R"(,"test_holes":[{"id":"t","at_m":[true,2]}])")},
      {"job.type", "/plan/services/0/located",
       jobText("", R"(,"services":[{"id":"s","kind":"gas","located":"yes"}])")},
      {"job.type", "/plan/services/0/entry",
       jobText("", R"(,"services":[{"id":"s","kind":"gas","entry":3}])")},
      {"job.type", "/plan/underlay/straighten/corners_px",
       jobText("", R"(,"underlay":{"path":"a.png","at_m":[0,0],"m_per_px":0.01,"straighten":)"
                   R"({"corners_px":[[0,0],[1,0],[1,1]],"width_m":1,"height_m":1}})")},
      {"job.number.range", "/plan/underlay/fade",
       jobText("", R"(,"underlay":{"path":"a.png","at_m":[0,0],"m_per_px":0.01,"fade":1.5})")},
      {"job.type", "/readings", jobText(R"(,"readings":{})")},
      {"job.type", "/works/0", jobText(R"(,"works":[1])")},
      {"job.type", "/readings/0/value_bq_m3", jobText(R"(,"readings":[{"value_bq_m3":"9"}])")},
      {"job.type", "/rule_sheet_copy", jobText(R"(,"rule_sheet_copy":[])")},
      {"job.word.unknown", "/plan/openings/0/kind",
       opening(R"("id":"o","kind":"hatch","edge":0,"offset_m":1,"width_m":1)")},
      {"job.word.unknown", "/looked_for/gas", jobText(R"(,"looked_for":{"gas":"maybe"})")},
      {"job.key.missing", "", R"({"version":1,"id":"a"})"},
      {"job.key.missing", "", R"({"format":"sumpwright.job","id":"a"})"},
      {"job.key.missing", "", R"({"format":"sumpwright.job","version":1})"},
      {"job.key.missing", "/plan/openings/0",
       opening(R"("id":"o","kind":"door","edge":0,"width_m":1)")},
      {"job.key.missing", "/plan/rings/0",
       R"({"format":"sumpwright.job","version":1,"id":"j","plan":{"rings":[{}]}})"},
      {"job.too-many", "/plan/rooms", jobText("", R"(,"rooms":)" + list("0", 10'001))},
      {"job.format", "/format", R"({"format":"other","version":1,"id":"a"})"},
      {"job.version.newer", "/version", R"({"format":"sumpwright.job","version":2,"id":4})"},
      {"job.version.newer", "/version", R"({"format":"sumpwright.job","version":1e400,"id":"a"})"},
      {"job.version.newer", "/version", R"({"version":1e400,"format":"sumpwright.job","id":"a"})"},
      {"job.number.not-finite", "/version", R"({"format":"other","version":1e400,"id":"a"})"},
      {"job.version.unknown", "/version", R"({"format":"sumpwright.job","version":0,"id":"a"})"},
      {"job.walls.count", "/plan/rings/0/walls",
       head + R"(,"plan":{"rings":[{"corners_m":[[0,0],[9,0],[0,6]],"walls":[{},{}]}]}})"},
  };
}

std::vector<ReadCase> notedCases() {
  return {
      {"job.key.unknown", "/colour", jobText(R"(,"colour":"blue")")},
      {"job.key.unknown", "/plan/openings/0/widht_m", opening(kOpening + R"(,"widht_m":2)")},
      {"job.key.unknown", "/a~1b~0c", jobText(R"(,"a/b~c":1)")},
      {"job.reading.confirm", "/readings/1/value_bq_m3",
       jobText(R"(,"readings":[{"value_bq_m3":310},{"value_bq_m3":5001}])")},
      {"job.reading.confirm", "/retest/0/value_bq_m3",
       jobText(R"(,"retest":[{"value_bq_m3":4.9}])")},
      {"plan.opening.off-wall", "/plan/openings/0/offset_m",
       opening(R"("id":"o","kind":"door","edge":0,"offset_m":8.5,"width_m":1)")},
  };
}

}  // namespace sumpwright::plan
