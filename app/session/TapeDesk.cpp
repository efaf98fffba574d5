#include "session/TapeDesk.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/TapeEdits.h"
#include "plan/WallEdits.h"
#include "tools/PairText.h"

namespace sumpwright::session {

namespace {

using tools::LengthFault;

constexpr double kQuarterTurn_deg = 90.0;

double within360(double degrees) { return std::fmod(std::fmod(degrees, 360.0) + 360.0, 360.0); }

}  // namespace

TapeDesk::TapeDesk(Session& session, QObject* parent) : QObject(parent), m_session(session) {
  connect(&session, &Session::jobChanged, this, [this] {
    m_ring = 0;
    m_start.reset();
    settle();
  });
  connect(&session, &Session::selectionChanged, this, &TapeDesk::followSelection);
  connect(&session, &Session::studyChanged, this, [this] {
    if (m_correcting && (outline() == nullptr || *m_correcting >= outline()->taped.size())) {
      m_correcting.reset();
    }
    if (m_inserting && (outline() == nullptr || *m_inserting >= outline()->taped.size())) {
      m_inserting.reset();
    }
    // The courtyard in hand is gone (undone): back to the house, unless it is to begin anew.
    if (outline() == nullptr && m_ring > 0 && !m_start) m_ring = 0;
    Q_EMIT changed();
  });
}

void TapeDesk::followSelection() {
  if (!m_session.hasJob() || !m_text.isEmpty() || m_correcting || m_inserting) return;
  const auto& rings = m_session.job().plan.rings;
  for (std::size_t r = 0; r < rings.size(); ++r) {
    for (const plan::Wall& wall : rings[r].walls) {
      if (wall.id == m_session.selected()) return takeRing(static_cast<int>(r));
    }
  }
}

/// Nothing typed, nothing corrected, the heading as suggested.
void TapeDesk::settle() {
  m_aim.reset();
  m_text.clear();
  m_line = {};
  m_correcting.reset();
  m_inserting.reset();
  m_drawn_to.reset();
  m_problems.clear();
  Q_EMIT changed();
}

void TapeDesk::takeRing(int ring) {
  if (ring == m_ring) return;
  m_ring = ring;
  m_start.reset();
  settle();
}

void TapeDesk::beginCourtyard(geometry::Point start) {
  if (!m_session.hasJob()) return;
  m_ring = static_cast<int>(m_session.job().plan.rings.size());
  m_start = start;
  settle();
}

/// Where the first wall of the ring in hand starts, as plan::addTaped has it.
geometry::Point TapeDesk::startOfRing() const {
  const plan::Ring* r = outline();
  if (r != nullptr && !r->corners.empty()) return r->corners.front();
  return m_start.value_or(geometry::Point{});
}

void TapeDesk::beginAt(geometry::Point start) {
  if (outline() != nullptr) return;
  m_start = start;
  Q_EMIT changed();
}

const plan::Ring* TapeDesk::outline() const {
  if (!m_session.hasJob() || m_ring < 0) return nullptr;
  const auto& rings = m_session.job().plan.rings;
  const auto index = static_cast<std::size_t>(m_ring);
  return index < rings.size() ? &rings[index] : nullptr;
}

bool TapeDesk::isOpen() const {
  return m_session.hasJob() && (m_correcting || plan::mayTape(m_session.job(), m_ring));
}

bool TapeDesk::isClosed() const {
  const plan::Ring* r = outline();
  return r != nullptr && r->closed && !r->corners.empty();
}

std::size_t TapeDesk::wall() const {
  if (m_correcting) return *m_correcting;
  if (m_inserting) return *m_inserting;
  return outline() == nullptr ? 0 : outline()->taped.size();
}

std::optional<double> TapeDesk::before_deg() const {
  const std::size_t n = wall();
  if (outline() == nullptr || n == 0 || n > outline()->taped.size()) return std::nullopt;
  return outline()->taped[n - 1].bearing_deg;
}

/// As the wall stands in the book, or on round the way the last corner turned.
double TapeDesk::suggested_deg() const {
  const std::size_t n = wall();
  if (m_correcting) return outline()->taped[n].bearing_deg;
  const auto before = before_deg();
  if (!before) return kQuarterTurn_deg;  // the first wall to the right
  double turn = -kQuarterTurn_deg;       // left: the house on the left
  if (n >= 2) {
    const double last = within360(*before - outline()->taped[n - 2].bearing_deg);
    if (last > 0.0 && last < 180.0) turn = kQuarterTurn_deg;
  }
  return within360(*before + turn);
}

tools::Aim TapeDesk::aimInForce() const {
  if (m_line.aim.kind != tools::AimKind::none) return m_line.aim;
  if (m_aim) return *m_aim;
  const bool square = !m_correcting || outline()->taped[*m_correcting].square;
  return {tools::AimKind::sheet, suggested_deg(), square};
}

double TapeDesk::heading_deg() const {
  if (!m_session.hasJob()) return kQuarterTurn_deg;
  return tools::sheetBearing(aimInForce(), before_deg(), m_session.job().plan.north_deg);
}

void TapeDesk::setHeading(double sheet_deg) {
  m_aim = tools::Aim{tools::AimKind::sheet, within360(sheet_deg), true};
  Q_EMIT changed();
}

void TapeDesk::setText(const QString& text) {
  m_text = text;
  const bool feet =
      m_session.hasJob() && m_session.job().display_units == plan::DisplayUnits::imperial;
  m_line = tools::readTapeLine(text.toStdString(),
                               feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  m_problems.clear();
  Q_EMIT changed();
}

void TapeDesk::correct(std::optional<std::size_t> wall) {
  if (wall && (outline() == nullptr || *wall >= outline()->taped.size())) wall.reset();
  settle();
  m_correcting = wall;
  Q_EMIT changed();
}

void TapeDesk::insertBefore(std::optional<std::size_t> wall) {
  if (wall && (outline() == nullptr || *wall >= outline()->taped.size())) wall.reset();
  settle();
  m_inserting = wall;
  Q_EMIT changed();
}

std::optional<geometry::Segment> TapeDesk::draft() const {
  if ((!m_line.length.ok() && !m_drawn_to) || !isOpen()) return std::nullopt;
  const std::size_t n = wall();
  geometry::Point from = startOfRing();
  if (const plan::Ring* r = outline(); r != nullptr && !r->corners.empty()) {
    from = r->corners[std::min(n, r->corners.size() - 1)];
  }
  const bool turned = m_line.aim.kind != tools::AimKind::none;
  if (m_drawn_to && !m_line.length.ok() && !turned) return geometry::Segment{from, *m_drawn_to};
  const double length =
      m_line.length.ok() ? m_line.length.metres.front() : geometry::distance(from, *m_drawn_to);
  const geometry::Leg leg{heading_deg(), length, true, false};
  return geometry::Segment{from, from + geometry::walked(leg)};
}

std::optional<geometry::Point> TapeDesk::drawFrom() const {
  if (!isOpen() || m_correcting || m_inserting) return std::nullopt;
  const plan::Ring* r = outline();
  if (r == nullptr || r->corners.empty()) return startOfRing();
  return r->corners.back();
}

void TapeDesk::drawTo(geometry::Point to, bool square) {
  const auto from = drawFrom();
  if (!from) return;
  m_drawn_to = to;
  if (geometry::distance(*from, to) > 0.0) {
    const double bearing = std::atan2(to.x - from->x, to.y - from->y) * 180.0 / std::numbers::pi;
    m_aim = tools::Aim{tools::AimKind::sheet, within360(bearing), square};
  }
  Q_EMIT changed();
}

void TapeDesk::stopDrawing() {
  if (m_drawn_to) settle();
}

TapeDesk::Outcome TapeDesk::finishDrawing() {
  const auto wall = draft();
  if (!m_drawn_to || !wall) return Outcome::nothing_typed;
  // A number that was meant to win and cannot be read must not give way to the pointer's.
  if (m_line.length.fault == LengthFault::ambiguous) return Outcome::ambiguous;
  if (!m_text.trimmed().isEmpty() && !m_line.ok()) return Outcome::not_a_length;
  const plan::Ring* r = outline();
  const bool home = m_text.trimmed().isEmpty() && r != nullptr && r->corners.size() > 2 &&
                    *m_drawn_to == r->corners.front();
  const plan::TapedWall drawn{heading_deg(), geometry::distance(wall->a, wall->b),
                              aimInForce().square};
  base::Result<plan::Job> after = plan::addTaped(m_session.job(), m_ring, drawn, m_start);
  if (after && home) after = plan::closeTaped(*after, m_ring, plan::Sharing::not_shared);
  if (!take(home ? tr("Close the outline") : tr("Draw a wall"), std::move(after))) {
    return Outcome::refused;
  }
  settle();
  return Outcome::done;
}

bool TapeDesk::take(const QString& text, base::Result<plan::Job> after) {
  m_problems = m_session.edit(text, std::move(after));
  if (!m_problems.empty()) {
    Q_EMIT changed();
    return false;
  }
  return true;
}

/// "12.4 x 8.6" before the first wall: the house begins as a rectangle.
std::optional<base::Result<plan::Job>> TapeDesk::typedRectangle() const {
  if (!m_session.hasJob() || !m_session.job().plan.rings.empty()) return std::nullopt;
  const bool feet = m_session.job().display_units == plan::DisplayUnits::imperial;
  const auto sides =
      tools::readPair(m_text.toStdString(), feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  if (!sides) return std::nullopt;
  return plan::rectangleHouse(m_session.job(), sides->first_m, sides->second_m);
}

TapeDesk::Outcome TapeDesk::submit() {
  m_problems.clear();
  if (auto house = typedRectangle()) {
    if (!take(tr("Begin with a rectangle"), std::move(*house))) return Outcome::refused;
    settle();
    return Outcome::done;
  }
  const bool only_turned =
      m_text.trimmed().isEmpty() ? m_aim.has_value() : m_line.ok() && needsLength();
  if (m_correcting && only_turned) {
    return submitReading(outline()->taped[*m_correcting].length_m);
  }
  if (m_line.ok() && needsLength()) {
    // Only a direction: it holds for the length that comes.
    m_aim = tools::Aim{tools::AimKind::sheet, heading_deg(), m_line.aim.square};
    setText({});
    return Outcome::turned;
  }
  switch (m_line.length.fault) {
    case LengthFault::none:
      return submitReading(m_line.length.metres.front());
    case LengthFault::ambiguous:
      return Outcome::ambiguous;
    case LengthFault::empty:
      return Outcome::nothing_typed;
    case LengthFault::not_a_length:
      break;
  }
  return m_text.trimmed().isEmpty() ? Outcome::nothing_typed : Outcome::not_a_length;
}

TapeDesk::Outcome TapeDesk::submitReading(double length_m) {
  if (!m_session.hasJob()) return Outcome::refused;
  const plan::TapedWall wall{heading_deg(), length_m, aimInForce().square};
  const plan::Job& job = m_session.job();
  const bool done =
      m_correcting
          ? take(tr("Correct a wall"), plan::replaceTaped(job, m_ring, *m_correcting, wall))
      : m_inserting ? take(tr("Put in a wall"), plan::insertTaped(job, m_ring, *m_inserting, wall))
                    : take(tr("Tape a wall"), plan::addTaped(job, m_ring, wall, m_start));
  if (!done) return Outcome::refused;
  settle();
  return Outcome::done;
}

bool TapeDesk::removeWall(std::size_t wall) {
  if (!m_session.hasJob()) return false;
  if (!take(tr("Take out a wall"), plan::removeTaped(m_session.job(), m_ring, wall))) return false;
  settle();
  return true;
}

bool TapeDesk::removeRing() {
  if (outline() == nullptr) return false;
  if (!take(tr("Take out a ring"), plan::removeRing(m_session.job(), m_ring))) return false;
  m_ring = 0;
  m_start.reset();
  settle();
  return true;
}

bool TapeDesk::close(plan::Sharing sharing) {
  if (!m_session.hasJob()) return false;
  if (!take(tr("Close the outline"), plan::closeTaped(m_session.job(), m_ring, sharing))) {
    return false;
  }
  settle();
  return true;
}

bool TapeDesk::reopen() {
  if (!m_session.hasJob()) return false;
  if (!take(tr("Open the outline"), plan::reopenTaped(m_session.job(), m_ring))) return false;
  settle();
  return true;
}

bool TapeDesk::setLength(std::size_t wall, double length_m) {
  if (outline() == nullptr || wall >= outline()->taped.size()) return false;
  plan::TapedWall corrected = outline()->taped[wall];
  corrected.length_m = length_m;
  if (!take(tr("Correct a wall"), plan::replaceTaped(m_session.job(), m_ring, wall, corrected))) {
    return false;
  }
  settle();
  return true;
}

geometry::Closing TapeDesk::closing() const {
  return geometry::closingOf(outline() == nullptr ? std::vector<geometry::Leg>{}
                                                  : plan::legsOf(outline()->taped));
}

bool TapeDesk::lastWallDrawn() const {
  const plan::Ring* r = outline();
  return isClosed() && !r->taped.empty() && r->taped.size() < r->corners.size();
}

std::vector<geometry::Misread> TapeDesk::misreads() const {
  if (outline() == nullptr || outline()->taped.size() < 3) return {};
  return geometry::misreadsThatExplain(plan::legsOf(outline()->taped), kAccuracy_m);
}

}  // namespace sumpwright::session
