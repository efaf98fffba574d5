#include <nlohmann/json.hpp>

#include "base/Contract.h"
#include "plan/JobTree.h"

namespace sumpwright::plan {

JobSource withRuleSheetCopy(const JobSource& source, std::string_view sheet) {
  JobSource::Document document = *source.m_document;
  Json root = document.root != nullptr ? *document.root
                                       : Json{{"format", kJobFormat}, {"version", kJobVersion}};
  if (sheet.empty()) {
    root.erase("rule_sheet_copy");
  } else {
    Json copy = Json::parse(sheet, nullptr, false);
    SUMPWRIGHT_REQUIRE(copy.is_object());
    root["rule_sheet_copy"] = std::move(copy);
  }
  document.root = std::make_shared<const Json>(std::move(root));
  JobSource out;
  out.m_document = std::make_shared<const JobSource::Document>(std::move(document));
  return out;
}

}  // namespace sumpwright::plan
