#pragma once
// A paper of text, tables and figures: head, parts one after the other, foot on every page.
//
//   Folio folio(sheet, title, for_whom);
//   folio.add(rows);                       // over the whole width
//   folio.add(rows, 2);                    // in two columns, evened out
//   return folio.finished();

#include "dossier/Sheet.h"

namespace sumpwright::dossier {

class Folio {
 public:
  /// `sheet` must outlive the folio.
  Folio(const Sheet& sheet, std::string title, const std::string& under);

  const Desk& desk() const { return m_sheet.desk; }
  double width_mm() const { return m_sheet.width_mm - 2.0 * kMargin_mm; }
  double columnWidth_mm(int columns) const;
  /// What is left of this page.
  double room_mm() const { return bottom() - m_y; }
  double pageRoom_mm() const { return bottom() - kMargin_mm - kLaterHead_mm; }
  /// Flows on below the last part, to as many pages as it needs. Rows must be made for
  /// columnWidth_mm(columns); a row taller than a page is left out.
  void add(const Rows& rows, int columns = 1);
  /// The same, but on a page of its own rather than broken, where a page holds it.
  void addWhole(const Rows& rows, int columns = 1);
  /// Rows over the whole width and what belongs below them, on one page where it holds both.
  void addTogether(const Rows& wide, const Rows& below, int columns);
  /// Two lists side by side.
  void addBeside(const Rows& left, const Rows& right);
  /// The same with a left one of that width; the right one was made for the rest but the gutter.
  void addBeside(const Rows& left, const Rows& right, double left_mm);
  /// What is left for it.
  double besideWidth_mm(double left_mm) const;
  void newPage();
  Document finished();

 private:
  static constexpr double kLaterHead_mm = 9.5;
  double bottom() const;
  const Sheet& m_sheet;
  std::string m_title;
  Document m_document;
  double m_y = 0.0;
  bool m_fresh = true;  ///< nothing stands on this page below its head
};

}  // namespace sumpwright::dossier
