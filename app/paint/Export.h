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

namespace sumpwright::paint {

struct Pages {
  std::string title;
  std::string author;
  std::string subject;
  double width_mm = 210.0;
  double height_mm = 297.0;
  std::span<const drawing::DrawList> pages;
};

/// Of a dossier's document, which must outlive the view.
template <class Document>
Pages pagesOf(const Document& document) {
  return {document.title,    document.author,    document.subject,
          document.width_mm, document.height_mm, document.pages};
}

enum class FileFormat { pdf, svg, png };

/// By the name's ending, upper or lower case; nothing for another.
std::optional<FileFormat> formatOf(const std::string& path);

inline constexpr int kPngDpi = 200;

/// The files written, in page order. Problems: paper.format (ending unknown), paper.no-pages,
/// paper.write (with the system's reason).
base::Result<std::vector<std::string>> exportPages(const Pages& pages, const std::string& path);

}  // namespace sumpwright::paint
