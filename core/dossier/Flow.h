#pragma once
// Text that flows through columns and pages: rows of known height, headings kept with what follows,
// columns of even height, never more in a column than it holds.

#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "drawing/Sketch.h"
#include "drawing/Theme.h"
#include "drawing/Voice.h"

namespace sumpwright::dossier {

using drawing::Colour;
using drawing::Font;
using drawing::Point;
using drawing::Sketch;

struct Row {
  Row(double height, std::function<void(Sketch&, Point)> painter, bool keep)
      : height_mm(height), paint(std::move(painter)), keep_with_next(keep) {}
  double height_mm;
  std::function<void(Sketch&, Point top_left)> paint;  ///< empty: a gap, dropped at a column's top
  bool keep_with_next;
  /// Table rows: repeated where the table goes on in a new column.
  std::shared_ptr<const Row> head;
  bool isGap() const { return !paint; }
};

using Rows = std::vector<Row>;

/// What all parts of a paper share.
struct Desk {
  const drawing::Voice& voice;
  const drawing::Theme& theme;
  std::string say(const char* id, std::vector<base::Arg> args = {}) const;
  std::string say(const base::Message& message) const { return voice.say(message); }
};

namespace fonts {
inline constexpr Font title{19.0, true, false};
inline constexpr Font verdict{15.0, true, false};
inline constexpr Font lead{9.6, true, false};
inline constexpr Font heading{9.6, true, false};
inline constexpr Font body{8.5, false, false};
inline constexpr Font strong{8.5, true, false};
inline constexpr Font small{7.5, false, false};
}  // namespace fonts

/// Rows under construction for a column of one width.
class Writer {
 public:
  Writer(const Desk& desk, double width_mm) : m_desk(desk), m_width(width_mm) {}
  const Desk& desk() const { return m_desk; }
  double width() const { return m_width; }

  void gap(double height_mm);
  void heading(const std::string& words);
  /// A paragraph; wrapped lines after the first stand `hang_mm` further in.
  void text(const std::string& words, const Font& font, const Colour& colour,
            double indent_mm = 0.0, double hang_mm = 0.0);
  void body(const std::string& words) { text(words, fonts::body, m_desk.theme.ink); }
  /// A box to tick, then the paragraph.
  void tick(const std::string& words);
  void row(Row row) { m_rows.push_back(std::move(row)); }
  void append(Rows rows);
  void keepLastWithNext();
  const Rows& rows() const { return m_rows; }

  Rows take() { return std::move(m_rows); }

 private:
  const Desk& m_desk;
  double m_width;
  Rows m_rows;
};

/// A region of a page with equal columns.
struct Region {
  double left = 0.0;
  double top = 0.0;
  double bottom = 0.0;
  double column_mm = 0.0;
  double gutter_mm = 0.0;
  int columns = 1;
  /// A taller region follows: what does not fit here whole waits for it.
  bool more_follows = false;
};

/// Places rows from `from` on; gives the index of the first that did not fit, and in `end_y` the
/// lowest point used. Rows that all fit are spread so that the columns come out nearly even.
std::size_t flow(Sketch& sketch, const Rows& rows, std::size_t from, const Region& region,
                 double& end_y);

double heightOf(const Rows& rows);
/// Rows one below the other; gives the y after the last.
double stack(Sketch& sketch, const Rows& rows, Point at);

}  // namespace sumpwright::dossier
