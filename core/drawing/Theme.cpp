#include "drawing/Theme.h"

namespace sumpwright::drawing {
namespace {

constexpr Colour rgb(unsigned hex) {
  return {static_cast<std::uint8_t>(hex >> 16U & 0xFFU),
          static_cast<std::uint8_t>(hex >> 8U & 0xFFU), static_cast<std::uint8_t>(hex & 0xFFU),
          255};
}

Theme lightTheme() {
  Theme t;
  t.paper = rgb(0xFAFBF8), t.panel = rgb(0xEFF2EE), t.desk = rgb(0xE3E7E3),
  t.raised = rgb(0xFFFFFF);
  t.hairline = rgb(0xD6DDD8), t.rule = rgb(0xB9C3BD), t.control_edge = rgb(0x7C8A90);
  t.ink = rgb(0x1A2931), t.ink2 = rgb(0x4A5961), t.ink3 = rgb(0x5C6B72);
  t.wall = rgb(0x33434D), t.wall_edge = rgb(0x1A2931), t.inner_wall = rgb(0x55656E);
  t.grid1 = rgb(0xE9EDE8), t.grid5 = rgb(0xD8DFD9);
  t.clear = {rgb(0x006E7A), rgb(0x005F6A), rgb(0xD4EAEB)};
  t.advised = {rgb(0xB58018), rgb(0x7A5500), rgb(0xF8EDD2)};
  // Nearly black and nearly empty: of the four the strongest ink on the least of the band, so that
  // it parts from refused (L* 25) in grey print and is never taken for a filled-in permission.
  t.not_proven = {rgb(0x0B1217), rgb(0x26343B), rgb(0xFAFBF8)};
  t.refused = {rgb(0x75123A), rgb(0x75123A), rgb(0xF5E2E8)};
  t.selection = rgb(0x2A55C4), t.selection_tint = rgb(0xDEE7FB);
  t.warning_text = rgb(0x7A5500), t.warning_tint = rgb(0xF8EDD2);
  t.stale_line = rgb(0x75838A), t.stale_text = rgb(0x5C6B72);
  t.primary = rgb(0x1A2931), t.primary_text = rgb(0xFFFFFF);
  t.electricity = rgb(0xB3261E), t.gas = rgb(0x806400), t.water = rgb(0x1F6FB2);
  t.telecom = rgb(0x4A6636), t.oil = rgb(0x6B4A2F), t.drain = rgb(0x565B62);
  t.heating = rgb(0x8A4A28), t.pipe_pair = rgb(0xD3B7A6), t.outside = rgb(0x808A83);
  t.soil = rgb(0xEFE9DC), t.soil_lines = rgb(0xB9AB92), t.hardcore = rgb(0xF1ECE2);
  t.concrete = rgb(0xE6E8E4), t.leaf = rgb(0xFFFFFF), t.glass = rgb(0xDCE9EE);
  t.roof = rgb(0xECEDE8);
  t.room_dwelling = rgb(0xFFFFFF), t.room_hall = rgb(0xF2F3EE), t.room_wet = rgb(0xE4EFF3);
  t.room_utility = rgb(0xEFECE3), t.wet_lines = rgb(0xB3CEDA);
  return t;
}

Theme darkTheme() {
  Theme t;
  t.paper = rgb(0x12181C), t.panel = rgb(0x1A2227), t.desk = rgb(0x0C1114),
  t.raised = rgb(0x263138);
  t.hairline = rgb(0x2C373D), t.rule = rgb(0x414F57), t.control_edge = rgb(0x7D8B92);
  t.ink = rgb(0xE9EDE9), t.ink2 = rgb(0xB4BFC2), t.ink3 = rgb(0x9AA7AC);
  t.wall = rgb(0xA9B6BA), t.wall_edge = rgb(0xD9E0DE), t.inner_wall = rgb(0x8896A0);
  t.grid1 = rgb(0x1A2227), t.grid5 = rgb(0x253037);
  t.clear = {rgb(0x6FE0DA), rgb(0x6FE0DA), rgb(0x12363A)};
  t.advised = {rgb(0xD79B2B), rgb(0xE5B35A), rgb(0x3A2D10)};
  // In the dark a grey half way between refused (L* 48) and advised against (L* 68).
  t.not_proven = {rgb(0x7D8B92), rgb(0xB4BFC2), rgb(0x12181C)};
  t.refused = {rgb(0xC2436A), rgb(0xF292AE), rgb(0x3B1A25)};
  t.selection = rgb(0x8FB0FF), t.selection_tint = rgb(0x23325C);
  t.warning_text = rgb(0xE5B35A), t.warning_tint = rgb(0x3A2D10);
  t.stale_line = rgb(0x8A979C), t.stale_text = rgb(0x9AA7AC);
  t.primary = rgb(0xE9EDE9), t.primary_text = rgb(0x12181C);
  t.electricity = rgb(0xFF8A80), t.gas = rgb(0xD9C04A), t.water = rgb(0x6FB4EA);
  t.telecom = rgb(0xA3C48A), t.oil = rgb(0xC8A182), t.drain = rgb(0xA8AEB5);
  t.heating = rgb(0xD79B78), t.pipe_pair = rgb(0x6E5344), t.outside = rgb(0x6F7C80);
  t.soil = rgb(0x23211B), t.soil_lines = rgb(0x6E6350), t.hardcore = rgb(0x2A2721);
  t.concrete = rgb(0x2A3237), t.leaf = rgb(0x263138), t.glass = rgb(0x1D323C);
  t.roof = rgb(0x1C2429);
  t.room_dwelling = rgb(0x151C20), t.room_hall = rgb(0x171F23), t.room_wet = rgb(0x17272F);
  t.room_utility = rgb(0x1F2321), t.wet_lines = rgb(0x2F4A58);
  return t;
}

/// The light theme on white sheets.
Theme paperTheme() {
  Theme t = lightTheme();
  t.paper = t.not_proven.tint = rgb(0xFFFFFF);
  return t;
}

}  // namespace

const Theme& theme(ThemeName name) {
  static const Theme light = lightTheme();
  static const Theme dark = darkTheme();
  static const Theme paper = paperTheme();
  switch (name) {
    case ThemeName::dark:
      return dark;
    case ThemeName::paper:
      return paper;
    case ThemeName::light:
      break;
  }
  return light;
}

const StateColours& Theme::of(rules::State state) const {
  switch (state) {
    case rules::State::advised_against:
      return advised;
    case rules::State::not_proven:
      return not_proven;
    case rules::State::refused:
      return refused;
    case rules::State::clear:
      break;
  }
  return clear;
}

Colour Theme::service(plan::ServiceKind kind) const {
  switch (kind) {
    case plan::ServiceKind::gas:
      return gas;
    case plan::ServiceKind::electricity:
      return electricity;
    case plan::ServiceKind::telecom:
      return telecom;
    case plan::ServiceKind::oil:
      return oil;
    case plan::ServiceKind::water:
      return water;
    case plan::ServiceKind::drain:
    case plan::ServiceKind::waste:
      break;
  }
  return drain;
}

Colour Theme::room(plan::RoomUse use) const {
  switch (use) {
    case plan::RoomUse::hall:
    case plan::RoomUse::stairs:
      return room_hall;
    case plan::RoomUse::bathroom:
    case plan::RoomUse::shower:
    case plan::RoomUse::wc:
      return room_wet;
    case plan::RoomUse::utility:
    case plan::RoomUse::store:
    case plan::RoomUse::garage:
      return room_utility;
    case plan::RoomUse::unknown:
    case plan::RoomUse::living:
    case plan::RoomUse::bedroom:
    case plan::RoomUse::kitchen:
    case plan::RoomUse::dining:
    case plan::RoomUse::office:
      break;
  }
  return room_dwelling;
}

}  // namespace sumpwright::drawing
