#include <nlohmann/json.hpp>

#include "cli/Section.h"
#include "plan/KindNames.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using SectionRow = nlohmann::ordered_json;

struct SectionWriter {
  const siting::Study& study;
  const build::DrillSection& section;

  std::string say(const base::Message& message) const {
    return words::say(message, study.job().display_units);
  }

  SectionRow said(const std::vector<base::Message>& messages) const {
    SectionRow rows = SectionRow::array();
    for (const base::Message& one : messages) {
      rows.push_back({{"id", one.id}, {"sentence", say(one)}});
    }
    return rows;
  }

  SectionRow buildUp() const {
    const build::BuildUp& up = section.up;
    SectionRow leaves = SectionRow::array();
    for (const build::Leaf& leaf : up.leaves) {
      leaves.push_back(
          {{"kind", plan::nameOf(leaf.kind)}, {"from_m", leaf.from_m}, {"to_m", leaf.to_m}});
    }
    return {{"wall_m", up.wall_m},
            {"leaves", std::move(leaves)},
            {"floor_m", up.floor_m},
            {"screed_m", up.screed_m},
            {"insulation_m", up.insulation_m},
            {"slab_m", up.slab_m},
            {"blinding_m", up.blinding_m},
            {"hardcore_m", up.hardcore_m},
            {"underside_m", up.underside_m()},
            {"ground_m", up.ground_m},
            {"ground_slope", up.ground_slope},
            {"dpc_m", up.dpc_m},
            {"barrier", plan::nameOf(up.barrier)},
            {"barrier_m", up.barrier_m},
            {"footing_top_low_m", up.footing_low_m},
            {"footing_top_high_m", up.footing_high_m},
            {"core_m", up.core_m},
            {"pipe_od_m", up.pipe_od_m},
            {"barrel_m", up.barrel_m}};
  }

  SectionRow hole() const {
    if (!section.bore) return {};
    return {
        {"entry_m", section.bore->entry_m},
        {"fall_deg", build::degreesOfFall(section.bore->fall)},
        {"start", section.start == build::Start::above_ground ? "above-ground" : "below-ground"},
        {"path_m", section.path_m},
        {"drop_m", section.drop_m},
        {"dig_m", section.dig_m},
        {"annulus_m", section.annulus_m},
        {"hollow_m3", section.hollow.volume_m3},
        {"hollow_radius_m", section.hollow.radius_m}};
  }

  SectionRow margins() const {
    SectionRow rows = SectionRow::array();
    for (const build::Margin& margin : section.margins) {
      const bool fall = margin.kind == build::LimitKind::gentle_fall ||
                        margin.kind == build::LimitKind::steep_fall;
      const auto value = [&](double v) { return fall ? build::degreesOfFall(v) : v; };
      rows.push_back({{"limit", build::limitName(margin.kind)},
                      {"unit", fall ? "deg" : "m"},
                      {"clear", value(margin.clear)},
                      {"needed", value(margin.needed)},
                      {"passes", margin.passes},
                      {"advisory", margin.advisory},
                      {"sentence", say(margin.what)}});
    }
    return rows;
  }

  SectionRow clash() const {
    if (!section.clash) return {};
    return {{"upper", build::limitName(section.clash->upper)},
            {"lower", build::limitName(section.clash->lower)},
            {"room_m", section.clash->room_m}};
  }

  SectionRow assumptions() const {
    SectionRow rows = SectionRow::array();
    for (const build::Assumption& one : section.up.assumed) {
      rows.push_back({{"id", one.what.id},
                      {"sentence", say(one.what)},
                      {"mark", base::kMarkNames[static_cast<std::size_t>(one.source.mark)]},
                      {"source", one.source.text}});
    }
    return rows;
  }
};

}  // namespace

nlohmann::ordered_json sectionJson(const siting::Study& study, const SectionAt& at) {
  const SectionWriter writer{study, at.section};
  const auto& top = at.section.footing_top_m;
  return {
      {"format", "sumpwright.section/1"},
      {"sump", at.sump.empty() ? SectionRow() : SectionRow(at.sump)},
      {"ring", at.place.ring},
      {"chainage_m", at.place.chainage_m},
      {"fit", build::fitName(at.section.fit)},
      {"verdict", {{"id", at.section.verdict.id}, {"sentence", writer.say(at.section.verdict)}}},
      {"hole", writer.hole()},
      {"footing_top_needed_m", top ? SectionRow(*top) : SectionRow()},
      {"clash", writer.clash()},
      {"margins", writer.margins()},
      {"build_up", writer.buildUp()},
      {"assumptions", writer.assumptions()},
      {"notes", writer.said(at.section.notes)},
      {"stopped", at.section.stopped},
      {"on_waiver", at.section.on_waiver}};
}

}  // namespace sumpwright::cli
