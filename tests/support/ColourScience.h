#pragma once
// Contrast, colour difference and colour-vision simulation, from their published definitions.

#include <array>

#include "drawing/DrawList.h"

namespace sumpwright::support {

using Triple = std::array<double, 3>;

/// sRGB to linear light (IEC 61966-2-1:1999, 5.2).
Triple linear(const drawing::Colour& colour);

/// Contrast ratio (W3C, WCAG 2.1, 2018, "contrast ratio" and "relative luminance").
double contrast(const drawing::Colour& a, const drawing::Colour& b);

/// CIE L*a*b*, white D65, from linear sRGB (CIE 15:2004, 8.2.1.1).
Triple lab(const Triple& linear_rgb);

/// CIEDE2000 (Sharma, Wu, Dalal: The CIEDE2000 Color-Difference Formula, Color Research and
/// Application 30 (1), 2005, equations 2 to 22).
double ciede2000(const Triple& lab1, const Triple& lab2);

enum class Seen { as_drawn, protanopia, deuteranopia, tritanopia, grey };

/// Linear light as somebody without one kind of cone sees it (Machado, Oliveira, Fernandes: A
/// Physiologically-based Model for Simulation of Color Vision Deficiency, IEEE TVCG 15 (6), 2009,
/// severity 1.0), or as luminance for grey print.
Triple seen(const drawing::Colour& colour, Seen as);

}  // namespace sumpwright::support
