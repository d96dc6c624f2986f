#include "post_fixing_form.hpp"

namespace rakewright {

static void describe(Form& form, BasePlate& plate) {
    form.about("A plate that lies level under the post, turned with it, with four holes about its middle.");
    form.lengths("size", plate.size, Range::positive, {2, 2}, be_given,
                 "along and across the post's first axis; one length: both alike");
    form.length("thickness", plate.thickness, Range::positive, be_given, "of the plate");
    form.lengths("holes", plate.holes, Range::positive, {2, 2}, be_given,
                 "centre to centre, along and across; one length: both alike");
    form.length("hole", plate.hole, Range::positive, be_given, "diameter of the holes");
}

static void describe(Form& form, PostRod& rod) {
    form.about(
        "A threaded rod up through a hollow post, along its axis: `below`, the floor, the plate, the post, `channel`, "
        "`washer`, `nut` and `spare` together. It needs the post's `reveal`.");
    form.place(rod.place);
    form.length("below", rod.below, Range::not_negative, may_be_left_out,
                "along the rod, under the floor: washer, nut and thread there, or what is held in concrete");
    form.length("floor", rod.floor, Range::not_negative, be_given,
                "plumb, the floor's build-up that it passes, from the underside to what the post stands on");
    form.length("channel", rod.channel, Range::not_negative, may_be_left_out,
                "plumb, what lies on the post and the rod passes, such as the web of a channel");
    form.length("washer", rod.washer, Range::not_negative, be_given, "along the rod, the washers over that");
    form.length("nut", rod.nut, Range::positive, be_given, "along the rod, the nuts over them");
    form.length("spare", rod.spare, Range::not_negative, be_given,
                "along the rod, the thread that stands past the nut");
    form.length("diameter", rod.diameter, Range::positive, "of the rod's thread, for the order");
}

void describe(Form& form, PostFixing& fixing) {
    form.about(
        "How posts that name it are fixed. What holds a guard's post is a structural matter, for local code and "
        "licensed practice; the figures that follow from this are for information.");
    form.id(fixing.id);
    form.choice("anchored_in", fixing.anchored_in,
                {{"wood", "framing or blocking under the floor"}, {"concrete", "a slab or footing"}}, be_given,
                "what its bolts or rod hold in");
    form.length("wood_under", fixing.wood_under, Range::positive, "thickness of the wood under the bolts");
    form.part("base_plate", fixing.base_plate, "the plate under the post; absent, there is none");
    form.part("rod", fixing.rod, "the rod up through the post; absent, there is none");
}

}  // namespace rakewright
