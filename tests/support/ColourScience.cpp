#include "support/ColourScience.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sumpwright::support {

namespace {

using Matrix = std::array<Triple, 3>;

constexpr Matrix kAsDrawn = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr Matrix kProtanopia = {{{0.152286, 1.052583, -0.204868},
                                 {0.114503, 0.786281, 0.099216},
                                 {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeuteranopia = {{{0.367322, 0.860646, -0.227968},
                                   {0.280085, 0.672501, 0.047413},
                                   {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritanopia = {{{1.255528, -0.076749, -0.178779},
                                 {-0.078411, 0.930809, 0.147602},
                                 {0.004733, 0.691367, 0.303900}}};
constexpr Triple kLuminance = {0.2126, 0.7152, 0.0722};
constexpr Matrix kGrey = {{kLuminance, kLuminance, kLuminance}};

double dot(const Triple& a, const Triple& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

double linear(double channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double radians(double deg) { return deg * std::numbers::pi / 180.0; }

double hueOf(double a, double b) {
  if (a == 0.0 && b == 0.0) return 0.0;
  const double h = std::atan2(b, a) * 180.0 / std::numbers::pi;
  return h < 0.0 ? h + 360.0 : h;
}

double power7(double c) { return std::pow(c, 7.0) / (std::pow(c, 7.0) + std::pow(25.0, 7.0)); }

/// Difference and mean of two hues the short way round (equations 10 and 14).
struct Hues {
  double difference = 0.0;
  double mean = 0.0;
};

Hues huesOf(double h1, double h2, bool grey) {
  if (grey) return {0.0, h1 + h2};
  Hues out{h2 - h1, (h1 + h2) / 2.0};
  if (std::abs(h1 - h2) <= 180.0) return out;
  out.difference += out.difference > 0.0 ? -360.0 : 360.0;
  out.mean += h1 + h2 < 360.0 ? 180.0 : -180.0;
  return out;
}

}  // namespace

Triple linear(const drawing::Colour& c) {
  return {linear(double{static_cast<double>(c.r)}), linear(static_cast<double>(c.g)),
          linear(static_cast<double>(c.b))};
}

double contrast(const drawing::Colour& a, const drawing::Colour& b) {
  const double la = dot(kLuminance, linear(a)) + 0.05;
  const double lb = dot(kLuminance, linear(b)) + 0.05;
  return std::max(la, lb) / std::min(la, lb);
}

Triple lab(const Triple& rgb) {
  constexpr Matrix kXyz = {{{0.4124564, 0.3575761, 0.1804375},
                            {0.2126729, 0.7151522, 0.0721750},
                            {0.0193339, 0.1191920, 0.9503041}}};
  constexpr Triple kWhite = {0.95047, 1.0, 1.08883};
  Triple clamped;
  std::transform(rgb.begin(), rgb.end(), clamped.begin(),
                 [](double c) { return std::clamp(c, 0.0, 1.0); });
  Triple f;
  for (std::size_t i = 0; i < 3; ++i) {
    const double t = dot(kXyz[i], clamped) / kWhite[i];
    f[i] = t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
  }
  return {116.0 * f[1] - 16.0, 500.0 * (f[0] - f[1]), 200.0 * (f[1] - f[2])};
}

double ciede2000(const Triple& p, const Triple& q) {
  const double mean = (std::hypot(p[1], p[2]) + std::hypot(q[1], q[2])) / 2.0;
  const double g = 1.0 + 0.5 * (1.0 - std::sqrt(power7(mean)));
  const double c1 = std::hypot(g * p[1], p[2]);
  const double c2 = std::hypot(g * q[1], q[2]);
  const Hues hues = huesOf(hueOf(g * p[1], p[2]), hueOf(g * q[1], q[2]), c1 * c2 == 0.0);
  const double dl = q[0] - p[0];
  const double dc = c2 - c1;
  const double dh = 2.0 * std::sqrt(c1 * c2) * std::sin(radians(hues.difference / 2.0));
  const double l = (p[0] + q[0]) / 2.0 - 50.0;
  const double c = (c1 + c2) / 2.0;
  const double h = hues.mean;
  const double t = 1.0 - 0.17 * std::cos(radians(h - 30.0)) + 0.24 * std::cos(radians(2.0 * h)) +
                   0.32 * std::cos(radians(3.0 * h + 6.0)) -
                   0.20 * std::cos(radians(4.0 * h - 63.0));
  const double turn = 30.0 * std::exp(-std::pow((h - 275.0) / 25.0, 2.0));
  const double sl = 1.0 + 0.015 * l * l / std::sqrt(20.0 + l * l);
  const double sc = 1.0 + 0.045 * c;
  const double sh = 1.0 + 0.015 * c * t;
  const double rt = -std::sin(radians(2.0 * turn)) * 2.0 * std::sqrt(power7(c));
  return std::sqrt(std::pow(dl / sl, 2.0) + std::pow(dc / sc, 2.0) + std::pow(dh / sh, 2.0) +
                   rt * dc / sc * dh / sh);
}

Triple seen(const drawing::Colour& colour, Seen as) {
  const Matrix& m = as == Seen::protanopia     ? kProtanopia
                    : as == Seen::deuteranopia ? kDeuteranopia
                    : as == Seen::tritanopia   ? kTritanopia
                    : as == Seen::grey         ? kGrey
                                               : kAsDrawn;
  const Triple l = linear(colour);
  return {dot(m[0], l), dot(m[1], l), dot(m[2], l)};
}

}  // namespace sumpwright::support
