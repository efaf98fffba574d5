#pragma once
// A document of draw lists into files: PDF (vector, real text, embedded fonts, XMP), SVG and PNG
// (one file a page: NAME.svg, NAME-2.svg, ...). Written whole or not at all. Needs a
// QGuiApplication; no display.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/Result.h"
#include "drawing/DrawList.h"

class QPainter;

namespace sumpwright::paint {

/// A picture file over a page, whole (dossier::Picture without the dossier).
struct PagePicture {
  std::size_t page = 0;
  double left_mm = 0.0;
  double top_mm = 0.0;
  double width_mm = 0.0;
  double height_mm = 0.0;
  std::string bytes;
};

struct Pages {
  std::string title;
  std::string author;
  std::string subject;
  double width_mm = 210.0;
  double height_mm = 297.0;
  std::span<const drawing::DrawList> pages;
  std::vector<PagePicture> pictures;
};

/// Of a dossier's document, which must outlive the view.
template <class Document>
Pages pagesOf(const Document& document) {
  Pages pages{document.title,
              document.author,
              document.subject,
              document.width_mm,
              document.height_mm,
              document.pages,
              {}};
  for (const auto& p : document.pictures) {
    pages.pictures.push_back({p.page, p.left_mm, p.top_mm, p.width_mm, p.height_mm, p.bytes});
  }
  return pages;
}

/// The pictures of one page, where they stand; unreadable bytes are left out. `units_per_mm` as
/// paintDrawList().
void paintPictures(QPainter& painter, std::span<const PagePicture> pictures, std::size_t page,
                   double units_per_mm);

enum class FileFormat { pdf, svg, png };

/// By the name's ending, upper or lower case; nothing for another.
std::optional<FileFormat> formatOf(const std::string& path);

inline constexpr int kPngDpi = 200;

/// The files written, in page order. Problems: paper.format (ending unknown), paper.no-pages,
/// paper.write (with the system's reason).
base::Result<std::vector<std::string>> exportPages(const Pages& pages, const std::string& path);

}  // namespace sumpwright::paint
