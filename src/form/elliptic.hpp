#pragma once
/// Lengths of arcs of ellipses. Internal to the room.

namespace evencount::form {

/// The length of the ellipse (x cos t, y sin t) from t = `from` over `sweep` radians (sweep >= 0, axes > 0),
/// in the axes' unit, within 1e-13 relative of the quarter ellipse it lies in.
///
/// By Carlson's symmetric integrals RF and RD with the duplication theorem (B. C. Carlson, "Numerical
/// computation of real or complex elliptic integrals", 1995; NIST DLMF 19.25.9 and 19.36). Checked against
/// Boost.Math's ellint_2 in tests/form/convex_curve_test.cpp.
[[nodiscard]] double elliptic_arc_length(double x_axis, double y_axis, double from, double sweep);

}  // namespace evencount::form
