#include "solid.hpp"

// Some distributions leave out a header that BRep_Tool and the primitive solids include: neither is used.
#include <BOPAlgo_MakerVolume.hxx>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeHalfSpace.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <algorithm>
#include <cmath>
#include <gp_Circ.hxx>
#include <gp_Cylinder.hxx>
#include <stdexcept>

namespace rakewright::tests {
namespace {

struct Ends {
    gp_Pnt first, last;
};

std::vector<Ends> edges_of(const TopoDS_Shape& solid) {
    std::vector<Ends> edges;
    TopTools_IndexedMapOfShape found;
    TopExp::MapShapes(solid, TopAbs_EDGE, found);
    for (int i = 1; i <= found.Extent(); ++i) {
        const BRepAdaptor_Curve curve(TopoDS::Edge(found(i)));
        edges.push_back({curve.Value(curve.FirstParameter()), curve.Value(curve.LastParameter())});
    }
    return edges;
}

TopoDS_Shape solid_of(const TopTools_ListOfShape& faces) {
    BOPAlgo_MakerVolume maker;
    maker.SetArguments(faces);
    maker.Perform();
    if (maker.HasErrors()) throw std::runtime_error("a solid that could not be made");
    return maker.Shape();
}

}  // namespace

TopoDS_Shape long_box(const gp_Ax2& axes, double length, double width, double depth) {
    const auto corner = [&](int side, int over, int end) {
        return axes.Location().Translated(gp_Vec(axes.XDirection()) * (side * width / 2) +
                                          gp_Vec(axes.YDirection()) * (over * depth / 2) +
                                          gp_Vec(axes.Direction()) * (end * length / 2));
    };
    TopTools_ListOfShape faces;
    const auto add_face = [&](const gp_Pnt& a, const gp_Pnt& b, const gp_Pnt& c, const gp_Pnt& d) {
        const TopoDS_Shape face = BRepBuilderAPI_MakeFace(BRepBuilderAPI_MakePolygon(a, b, c, d, true).Wire(), true);
        faces.Append(face);
    };
    for (const int s : {-1, 1}) {
        add_face(corner(s, -1, -1), corner(s, 1, -1), corner(s, 1, 1), corner(s, -1, 1));
        add_face(corner(-1, s, -1), corner(1, s, -1), corner(1, s, 1), corner(-1, s, 1));
        add_face(corner(-1, -1, s), corner(1, -1, s), corner(1, 1, s), corner(-1, 1, s));
    }
    return solid_of(faces);
}

TopoDS_Shape trimmed(const TopoDS_Shape& shape, const gp_Pln& plane) {
    const gp_Pnt kept = plane.Location().Translated(gp_Vec(plane.Axis().Direction()));
    const BRepPrimAPI_MakeHalfSpace half(BRepBuilderAPI_MakeFace(plane).Face(), kept);
    BRepAlgoAPI_Common common(shape, half.Solid());
    if (!common.IsDone()) throw std::runtime_error("a solid that could not be trimmed");
    return common.Shape();
}

TopoDS_Shape long_cylinder(const gp_Ax1& axis, double length, double radius) {
    const gp_Vec along(axis.Direction());
    TopTools_ListOfShape faces;
    const gp_Cylinder round(gp_Ax3(gp_Ax2(axis.Location(), axis.Direction())), radius);
    const TopoDS_Shape side = BRepBuilderAPI_MakeFace(round, 0, 2 * M_PI, -length, length);
    faces.Append(side);
    for (const int end : {-1, 1}) {
        const gp_Ax2 there(axis.Location().Translated(along * (end * length)), axis.Direction());
        const TopoDS_Wire rim = BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(gp_Circ(there, radius)).Edge()).Wire();
        const TopoDS_Shape disc = BRepBuilderAPI_MakeFace(rim, true);
        faces.Append(disc);
    }
    return solid_of(faces);
}

TopoDS_Shape hollowed(const TopoDS_Shape& shape, const gp_Ax1& axis, double radius, const gp_Vec& side, double reach) {
    const gp_Vec along(axis.Direction());
    const gp_Dir away(side - along * (side * along));
    const TopoDS_Shape beside = trimmed(shape, gp_Pln(axis.Location(), away));
    // The seam of the cylinder looks to the other side.
    const gp_Cylinder cylinder(gp_Ax3(axis.Location(), axis.Direction(), away.Reversed()), radius);
    const BRepPrimAPI_MakeHalfSpace outside(BRepBuilderAPI_MakeFace(cylinder, 0, 2 * M_PI, -reach, reach).Face(),
                                            axis.Location().Translated(gp_Vec(away) * (2 * radius)));
    BRepAlgoAPI_Common common(beside, outside.Solid());
    if (!common.IsDone()) throw std::runtime_error("a solid that could not be hollowed");
    return common.Shape();
}

double common_volume(const TopoDS_Shape& one, const TopoDS_Shape& other) {
    BRepAlgoAPI_Common common(one, other);
    if (!common.IsDone()) throw std::runtime_error("two solids that could not be compared");
    return std::fabs(volume_of(common.Shape()));
}

double volume_of(const TopoDS_Shape& solid) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(solid, properties);
    return properties.Mass();
}

std::vector<gp_Pnt> corners_of(const TopoDS_Shape& solid) {
    std::vector<gp_Pnt> corners;
    const auto add = [&](const gp_Pnt& point) {
        const bool known = std::any_of(corners.begin(), corners.end(),
                                       [&](const gp_Pnt& corner) { return corner.IsEqual(point, 1e-6); });
        if (!known) corners.push_back(point);
    };
    for (const Ends& edge : edges_of(solid)) {
        add(edge.first);
        add(edge.last);
    }
    return corners;
}

std::vector<double> edges_along(const TopoDS_Shape& solid, const gp_Dir& direction) {
    std::vector<double> lengths;
    for (const Ends& edge : edges_of(solid)) {
        const gp_Vec along(edge.first, edge.last);
        if (gp_Dir(along).IsParallel(direction, 1e-9)) lengths.push_back(along.Magnitude());
    }
    std::sort(lengths.begin(), lengths.end());
    return lengths;
}

double extent(const TopoDS_Shape& solid, const gp_Dir& direction) {
    double first = INFINITY, last = -INFINITY;
    for (const gp_Pnt& corner : corners_of(solid)) {
        const double along = gp_Vec(corner.XYZ()) * gp_Vec(direction);
        first = std::min(first, along);
        last = std::max(last, along);
    }
    return last - first;
}

}  // namespace rakewright::tests
