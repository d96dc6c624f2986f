#pragma once

#include <geos_c.h>

#include "../../solver/opening/circle.hpp"

namespace rakewright::tests {

/// An outline as a polygon of GEOS, and its maximum inscribed circle at a tolerance: never larger than the truth.
class Geos {
 public:
    explicit Geos(const Outline& outline) : context_(GEOS_init_r()) {
        const auto count = static_cast<unsigned>(outline.size());
        GEOSCoordSequence* ring = GEOSCoordSeq_create_r(context_, count + 1, 2);
        for (unsigned i = 0; i <= count; ++i)
            GEOSCoordSeq_setXY_r(context_, ring, i, outline[i % count].along, outline[i % count].up);
        polygon_ = GEOSGeom_createPolygon_r(context_, GEOSGeom_createLinearRing_r(context_, ring), nullptr, 0);
    }
    ~Geos() {
        GEOSGeom_destroy_r(context_, polygon_);
        GEOS_finish_r(context_);
    }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    double diameter(double tolerance) const {
        GEOSGeometry* radius = GEOSMaximumInscribedCircle_r(context_, polygon_, tolerance);
        double length = 0;
        GEOSLength_r(context_, radius, &length);
        GEOSGeom_destroy_r(context_, radius);
        return 2 * length;
    }

 private:
    GEOSContextHandle_t context_;
    GEOSGeometry* polygon_ = nullptr;
};

}  // namespace rakewright::tests
