#pragma once
// The outline being taped: which ring, which way the next wall goes, what is typed so far, which
// wall of the field book is being corrected. Panel, plan and strip show it; it writes through the
// session, one step of undo for each wall.

#include <QObject>
#include <QString>
#include <optional>
#include <vector>

#include "geometry/Traverse.h"
#include "session/Session.h"
#include "tools/TapeLine.h"

namespace sumpwright::session {

class TapeDesk final : public QObject {
  Q_OBJECT

 public:
  /// A gap within this needs no explaining, and a misreading that leaves no more explains it (own
  /// figure: what a tape along four walls may be out).
  static constexpr double kAccuracy_m = 0.02;

  explicit TapeDesk(Session& session, QObject* parent = nullptr);

  /// The ring in hand: 0, or one past the last to begin a courtyard. The ring of a wall that is
  /// chosen is taken in hand, unless something is being typed.
  int ring() const { return m_ring; }
  void takeRing(int ring);
  /// Takes in hand a courtyard whose first wall starts there.
  void beginCourtyard(geometry::Point start);
  /// nullptr where the ring is not there yet.
  const plan::Ring* outline() const;
  /// Whether a wall can be typed: the ring is open with a book, not begun, or one is corrected.
  bool isOpen() const;
  bool isClosed() const;

  /// Sheet bearing of the wall that is typed next, degrees clockwise from up.
  double heading_deg() const;
  void setHeading(double sheet_deg);
  const QString& text() const { return m_text; }
  void setText(const QString& text);

  /// Number of the wall in hand, from 0: the one corrected, or the next.
  std::size_t wall() const;
  std::optional<std::size_t> correcting() const { return m_correcting; }
  void correct(std::optional<std::size_t> wall);
  /// The next wall typed goes before this one of the book, or at its end again.
  std::optional<std::size_t> inserting() const { return m_inserting; }
  void insertBefore(std::optional<std::size_t> wall);

  /// The wall as typed so far, from the corner before it.
  std::optional<geometry::Segment> draft() const;
  bool needsLength() const { return m_line.length.fault == tools::LengthFault::empty; }

  enum class Outcome { done, turned, nothing_typed, not_a_length, ambiguous, refused };
  /// Adds, puts in or corrects the wall; two sides ("12.4 x 8.6") before the first wall begin the
  /// house as a rectangle. A direction without a length turns the heading; where a wall is
  /// corrected, it turns that wall, which keeps its length.
  Outcome submit();
  /// The same with one of the two readings.
  Outcome submitReading(double length_m);
  const std::vector<double>& readings() const { return m_line.length.metres; }
  /// Why the last one was refused.
  const base::Problems& problems() const { return m_problems; }

  // The same with the pointer: the wall runs to a point; a typed length wins over the point's.

  /// Where the outline begins that is not there yet; the origin otherwise.
  void beginAt(geometry::Point start);
  /// Corner the next wall starts from; nothing while none can be added.
  std::optional<geometry::Point> drawFrom() const;
  /// `square`: the direction was brought to a right angle, so it is taken for granted.
  void drawTo(geometry::Point to, bool square);
  bool isDrawing() const { return m_drawn_to.has_value(); }
  void stopDrawing();
  /// Adds the wall as drawn; one drawn back onto the start closes the outline as well.
  Outcome finishDrawing();

  bool removeWall(std::size_t wall);
  /// Takes the ring in hand off the plan with all that stands on it; the house only after its
  /// courtyards.
  bool removeRing();
  bool close(plan::Sharing sharing);
  bool reopen();
  /// Gives a wall of the book another length (a misreading put right).
  bool setLength(std::size_t wall, double length_m);

  geometry::Closing closing() const;
  /// The outline is closed by a wall that nobody measured: how well it closes is not known.
  bool lastWallDrawn() const;
  /// Walls whose misreading would explain the gap; none while there are fewer than three walls.
  std::vector<geometry::Misread> misreads() const;

 Q_SIGNALS:
  void changed();

 private:
  std::optional<double> before_deg() const;
  double suggested_deg() const;
  geometry::Point startOfRing() const;
  std::optional<base::Result<plan::Job>> typedRectangle() const;
  void followSelection();
  tools::Aim aimInForce() const;
  bool take(const QString& text, base::Result<plan::Job> after);
  void settle();

  Session& m_session;
  int m_ring = 0;
  std::optional<tools::Aim> m_aim;  ///< chosen by an arrow; none: as suggested
  QString m_text;
  tools::TapeLine m_line;
  std::optional<std::size_t> m_correcting;
  std::optional<std::size_t> m_inserting;
  std::optional<geometry::Point> m_drawn_to;
  std::optional<geometry::Point> m_start;  ///< of a ring that is not there yet
  base::Problems m_problems;
};

}  // namespace sumpwright::session
