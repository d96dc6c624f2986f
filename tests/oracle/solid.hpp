#pragma once

#include <TopoDS_Shape.hxx>
#include <gp_Ax1.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>
#include <gp_Vec.hxx>
#include <vector>

// Pieces as solids of Open CASCADE: a box long enough, with everything behind a plane taken off.

namespace rakewright::tests {

/// A box about the origin of `axes`: so long along their main direction, so wide along their first, so deep along the
/// other.
TopoDS_Shape long_box(const gp_Ax2& axes, double length, double width, double depth);

/// A cylinder about an axis, so long to either side of its location.
TopoDS_Shape long_cylinder(const gp_Ax1& axis, double length, double radius);

/// What is left outside a cylinder, on that side of its axis; of a shape no farther off than `reach` along the axis.
TopoDS_Shape hollowed(const TopoDS_Shape& shape, const gp_Ax1& axis, double radius, const gp_Vec& side, double reach);

/// What two solids have in common.
double common_volume(const TopoDS_Shape& one, const TopoDS_Shape& other);

/// What is left on the side of a plane to which its normal looks.
TopoDS_Shape trimmed(const TopoDS_Shape& shape, const gp_Pln& plane);

double volume_of(const TopoDS_Shape& solid);

/// Every corner, once.
std::vector<gp_Pnt> corners_of(const TopoDS_Shape& solid);

/// The lengths of the straight edges that run along a direction, shortest first.
std::vector<double> edges_along(const TopoDS_Shape& solid, const gp_Dir& direction);

/// From the first to the last of it along a direction.
double extent(const TopoDS_Shape& solid, const gp_Dir& direction);

}  // namespace rakewright::tests
