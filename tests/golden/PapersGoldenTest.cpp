// Every paper of every sample, as a draw list with fixed letter widths: what each page says and
// where, and a checksum of all that is drawn otherwise, by theme. The suction study is left out,
// whose last digits hang on the machine. After a change that is meant, run with
// SUMPWRIGHT_RENEW_GOLDEN=1 and read the difference.

#include <gtest/gtest.h>

#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "airflow/FanTable.h"
#include "core/drawing/Drawn.h"
#include "dossier/Papers.h"
#include "plan/JobText.h"
#include "resources/BuiltIn.h"
#include "support/Golden.h"
#include "support/RandomPlan.h"

namespace sumpwright {
namespace {

std::vector<std::string> sampleNames() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(SUMPWRIGHT_SAMPLES_DIR)) {
    const std::string file = entry.path().filename().string();
    constexpr std::string_view kEnd = ".sump.json";
    if (file.ends_with(kEnd)) names.push_back(file.substr(0, file.size() - kEnd.size()));
  }
  std::sort(names.begin(), names.end());
  return names;
}

plan::Job jobOf(const std::string& sample) {
  std::ifstream in(std::string(SUMPWRIGHT_SAMPLES_DIR) + "/" + sample + ".sump.json",
                   std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return plan::readJob(text.str()).value().job;
}

dossier::ClientPlanOptions optionsFor(const siting::Study& study) {
  dossier::ClientPlanOptions options;
  options.date = "2026-06-02";
  options.letterhead.firm = "Invented Soil Gas Works";
  options.letterhead.lines = {"4 Made-up Yard, Nowhere"};
  const auto fans = airflow::readFanTable(resources::builtInFanTables()[0].text).value();
  const auto system = siting::usualSystem(study.site(), fans.fans.front(), true);
  const auto book = price::readPriceBook(resources::builtInPriceBooks()[0].text).value();
  dossier::Pricing pricing;
  pricing.quote =
      price::priced(price::needsOf(study, system), book, study.job().design.quote).value();
  options.pricing = std::make_shared<const dossier::Pricing>(std::move(pricing));
  return options;
}

/// Checksums of lines by theme, in the order the themes come (FNV-1a, 64 bit).
class Sums {
 public:
  void add(const std::string& theme, const std::string& line) {
    const auto [it, fresh] = m_sums.try_emplace(theme, Sum{});
    if (fresh) m_order.push_back(theme);
    ++it->second.lines;
    for (const char c : line) {
      it->second.hash ^= static_cast<unsigned char>(c);
      it->second.hash *= 0x100000001b3U;
    }
  }
  std::string text() const {
    std::string out;
    for (const std::string& theme : m_order) {
      const Sum& sum = m_sums.at(theme);
      char line[64];
      std::snprintf(line, sizeof line, "%d shapes %016llx", sum.lines,
                    static_cast<unsigned long long>(sum.hash));
      out += theme + " | " + line + '\n';
    }
    return out;
  }

 private:
  struct Sum {
    int lines = 0;
    std::uint64_t hash = 0xcbf29ce484222325U;
  };
  std::map<std::string, Sum> m_sums;
  std::vector<std::string> m_order;
};

std::string digestOf(const drawing::DrawList& page) {
  std::istringstream lines(toText(page));
  std::string out;
  std::string line;
  Sums sums;
  while (std::getline(lines, line)) {
    const std::size_t bar = line.find(" | ");
    if (bar == std::string::npos || line.compare(bar + 3, 5, "text ") == 0) {
      out += line + '\n';
    } else {
      sums.add(line.substr(0, bar), line);
    }
  }
  return out + sums.text();
}

TEST(PapersGolden, OfEverySample) {
  const auto names = sampleNames();
  ASSERT_FALSE(names.empty());
  for (const std::string& name : names) {
    const plan::Job job = jobOf(name);
    const auto study = siting::Study::of(job, support::builtInSheet(job.rule_sheet)).value();
    const auto options = optionsFor(study);
    std::string text;
    for (const dossier::Paper paper : dossier::allPapers()) {
      const auto document = dossier::paperOf(paper, study, drawing::voice(), options);
      text += "== " + std::string(dossier::nameOf(paper)) + ", " +
              std::to_string(document.pages.size()) + " pages: " + document.title + '\n';
      for (const auto& page : document.pages) text += digestOf(page);
    }
    support::expectGolden("golden/papers/" + name + ".txt", text);
  }
}

}  // namespace
}  // namespace sumpwright
