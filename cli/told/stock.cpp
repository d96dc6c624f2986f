#include "telling.hpp"

namespace rakewright {

Told Telling::of_stock() const {
    switch (finding_.trouble) {
        case Trouble::stock_twice: return {"there is stock of this section already", "all its `lengths` in one entry"};
        case Trouble::prices_do_not_match:
            return {"prices and lengths do not match: " + whole(0) + " and " + whole(1),
                    "a price for each of `lengths`, in their order"};
        case Trouble::bar_trimmed_away:
            return {"a trim of " + size(0) + " at each end leaves nothing of a bar of " + size(1),
                    "a smaller `trim`: it is what is squared off at each end"};
        case Trouble::longer_than_stock:
            return {"a piece of " + against(0, 1) +
                        " from tip to tip does not come out of this stock: its longest bar "
                        "gives " +
                        against(1, 0) + (finding_.numbers[2] > 0 ? " between its trims" : ""),
                    "a longer bar among the stock's `lengths`, or a shorter piece"};
        case Trouble::too_many_to_cut:
            return {"more than " + whole(1) + " pieces would be cut from this stock", "a plan for a part of the job"};
        case Trouble::no_stock_of_section:
            return {"the plan leaves out what is " + bare(0) + " x " + bare(1) + ", " + whole(2) +
                        (finding_.numbers[2] == 1 ? " piece" : " pieces") + ": no `stock` has that section",
                    {}};
        case Trouble::left_out_of_stock:
            return {"the plan leaves out " + whole(0) + (finding_.numbers[0] == 1 ? " piece" : " pieces") +
                        " that no stick of stock is cut to: turned or round pickets, and handrails that are round "
                        "or known by their perimeter",
                    {}};
        case Trouble::nothing_from_stock:
            return {"the stock of " + bare(0) + " x " + bare(1) + " has no effect: nothing is cut from it", {}};
        default: return {};
    }
}

}  // namespace rakewright
