#pragma once

#include <cmath>
#include <optional>

#include "../../solver/fixing_sheet.hpp"
#include "../told.hpp"

namespace rakewright {

/// Which file of this folder tells a trouble.
enum class TroubleRoom {
    stair,
    post,
    joint,
    section,
    rail,
    picket,
    spacing,
    turned,
    beside,
    bracket,
    screw,
    handrail,
    stock
};

/// None: there is no such trouble.
std::optional<TroubleRoom> room_of(Trouble trouble);

/// Tells one finding; a file for each room. What a room does not know, it tells with no words.
class Telling {
 public:
    Telling(const Job& job, const Finding& finding) : job_(job), finding_(finding), tape_(tape_of(job)) {}

    Told told() const;

 private:
    Told of_stair() const;
    Told of_post() const;
    Told of_joint() const;
    Told of_section() const;
    Told of_rail() const;
    Told of_picket() const;
    Told of_spacing() const;
    Told of_turned() const;
    Told of_beside() const;
    Told of_bracket() const;
    Told of_screw() const;
    Told of_handrail() const;
    Told of_stock() const;

    const char* unit() const { return job_.units == Unit::inch ? " in" : " mm"; }
    std::string length_of(double value) const { return words_of_length(value, tape_) + unit(); }
    std::string length(std::size_t i) const { return length_of(finding_.numbers[i]); }
    std::string difference(std::size_t i, std::size_t j) const {
        const double more = finding_.numbers[j] - finding_.numbers[i];
        return words_against(std::fabs(more), 0, tape_) + (more < 0 ? " less" : " more");
    }
    /// A size that the job states, as it was given.
    std::string bare(std::size_t i) const { return words_of_size(finding_.numbers[i], tape_); }
    std::string size(std::size_t i) const { return bare(i) + unit(); }

    /// A length beside another, so fine that it cannot be taken for it.
    std::string against(std::size_t i, std::size_t j) const {
        return words_against(finding_.numbers[i], finding_.numbers[j], tape_) + unit();
    }

    /// A length that is more than nothing, however little.
    std::string off_nothing(double value) const { return words_against(value, 0, tape_) + unit(); }

    std::string short_by() const { return off_nothing(finding_.numbers[2] - finding_.numbers[1]); }
    std::string whole(std::size_t i) const { return std::to_string(static_cast<int>(finding_.numbers[i])); }
    std::string over_tread(std::size_t i) const {
        return finding_.numbers[i] < 0 ? "the opening under the rail" : "the opening over tread " + whole(i);
    }
    std::string end() const { return finding_.end == 0 ? "from" : "to"; }
    std::string group() const { return finding_.numbers[0] == 0 ? "upper" : "lower"; }

    std::string fixing_name() const {
        for (const PostFixing& fixing : job_.post_fixings)
            if (fixing.id.place.begin == finding_.also.begin) return fixing.id.name;
        return {};
    }

    std::string fixing_here() const {
        for (const PostFixing& fixing : job_.post_fixings)
            if (fixing.id.place.begin == finding_.place.begin) return fixing.id.name;
        return {};
    }

    std::string member_name() const {
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const Build& build = job_.builds[static_cast<std::size_t>(section.build.index)];
        const auto m = static_cast<std::size_t>(finding_.numbers[1]);
        return m < build.upper.size() ? build.upper[m].name : build.lower[m - build.upper.size()].name;
    }

    /// The post or joint that the finding is at.
    std::string post_here() const {
        for (const Post& post : job_.posts)
            if (post.id.place.begin == finding_.place.begin) return post.id.name;
        return {};
    }

    /// A length that must not be more than it is: the mark under it.
    std::string floored(std::size_t i) const {
        return words_of_mark(fitting_mark(finding_.numbers[i], 0, tape_), tape_) + unit();
    }

    /// Which screw, as the tables call it, and by its key.
    std::string joint() const {
        const Joint joint = static_cast<Joint>(finding_.numbers[0]);
        return std::string(joint_on_paper(joint)) + " (`" + words(joint) + "`)";
    }

    /// A number without a unit.
    std::string plain(std::size_t i) const { return words_of_length(finding_.numbers[i], Tape{tape_.unit, 0.001}); }

    /// What a screw is in: a member of the finding's section, a picket or a post.
    std::string piece() const {
        const double index = finding_.numbers[3];
        if (index < 0) return index == -1 ? "a picket" : "the post";
        const Build& build = job_.builds[static_cast<std::size_t>(
            job_.sections[static_cast<std::size_t>(finding_.section)].build.index)];
        const std::size_t member = static_cast<std::size_t>(index), upper = build.upper.size();
        return "the " + (member < upper ? build.upper[member] : build.lower[member - upper]).name;
    }

    std::string screw_near(const char* what, const char* how) const {
        return "the screw " + joint() + " comes within " + length(1) + " of " + what + piece() + how + ", less than " +
               length(2) + ": that may split although it is drilled";
    }

    std::string no_driving_order() const {
        const bool one = finding_.numbers[0] == 1;
        std::string text = "no straight driver gets home at both screws of " + whole(0) +
                           (one ? " bracket" : " brackets") + ", on the post first or on the rail first";
        if (finding_.numbers[1] < finding_.numbers[2])
            text += "; at a screw in the rail " + against(1, 2) + " is free, square to the rail, and " + against(2, 1) +
                    " is needed";
        if (finding_.numbers[3] > 0) text += "; with the leg turned the other way " + whole(3) + " would do";
        return text;
    }

    /// "the upper brackets", or the one at an end.
    std::string brackets() const {
        return finding_.end < 0 ? "the " + group() + " brackets" : "the " + group() + " bracket at " + where();
    }

    static constexpr const char* seen = ", seen looking at the post";

    std::string mortise_near_side() const {
        const double left = finding_.numbers[1], right = finding_.numbers[2];
        const double least = std::fmin(left, right), asked = finding_.numbers[3];
        const bool askew = !alike(left, right);
        return "no mortise can be cut for " + brackets() + ": it would leave " + words_against(least, asked, tape_) +
               unit() +
               (askew ? std::string(" of the rail's lowest member to the ") + (left < right ? "left" : "right") + seen +
                            ", where the leg runs askew"
                      : " on each side of the rail's lowest member") +
               ", and `least_beside` asks for " + size(3) +
               ". A rabbet right across it can be, or the bracket on the surface";
    }

    std::string leg_leaves_rail() const {
        const double left = finding_.numbers[1], right = finding_.numbers[2];
        const std::string of = "the rail leg of " + brackets(),
                          no_mortise = finding_.numbers[3] > 0 ? ": no mortise can hold it" : "";
        if (alike(left, right))
            return of + " is wider than the rail's lowest member and stands out " + off_nothing(-left) +
                   " on each side" + no_mortise + ". Take a narrower plate";
        return of + " stands out of the rail's lowest member, " + off_nothing(-std::fmin(left, right)) + " to the " +
               (left < right ? "left" : "right") + seen +
               (std::fmax(left, right) < 0 ? ", and " + off_nothing(-std::fmax(left, right)) + " on the other side"
                                           : std::string()) +
               no_mortise + ". Turn the post, or take a shorter or a narrower leg";
    }

    std::string screws_meet() const {
        const std::string other = job_.sections[static_cast<std::size_t>(finding_.numbers[2])].id.name;
        const bool known = finding_.numbers[3] > 0;
        return "in post " + post_name() + " a screw " + (known ? "meets" : "may meet") + " one of section " + other +
               (known ? ": their middles come within "
                      : ", if the rails come in square round a corner or from "
                        "opposite sides: their middles may come within ") +
               against(0, 1) + ", and must stay " + size(1) + " apart";
    }

    std::string handrail_name() const {
        for (const Handrail& handrail : job_.handrails)
            if (handrail.id.place.begin == finding_.place.begin) return handrail.id.name;
        return {};
    }

    std::string build_name() const {
        for (const Build& build : job_.builds)
            if (build.id.place.begin == finding_.place.begin) return build.id.name;
        return {};
    }

    const std::string& section_name() const {
        return job_.sections[static_cast<std::size_t>(finding_.section)].id.name;
    }

    std::string post_name() const {
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const Ref& post = finding_.end == 0 ? section.from : section.to;
        return post.named() ? job_.posts[static_cast<std::size_t>(post.index)].id.name : end() + " end";
    }

    /// The post at an end, or the end where none is named.
    std::string where() const {
        if (finding_.section < 0) return "the " + end() + " end";
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const bool named = (finding_.end == 0 ? section.from : section.to).named();
        return named ? post_or_joint() : "the " + end() + " end";
    }

    /// What the section ends at.
    std::string kind_of_end() const {
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const Ref& post = finding_.end == 0 ? section.from : section.to;
        return is_joint(job_, post) ? "joint" : "post";
    }

    std::string post_or_joint() const { return kind_of_end() + " " + post_name(); }

    std::string gap_at_post() const {
        return "the gap at " + post_or_joint() + " is " + against(0, 1) + ", over the widest allowed, " + size(1) +
               ": " + (finding_.numbers[2] > 0 ? whole(2) + " on each tread cures it, or move" : std::string("move")) +
               " the " + kind_of_end() + " " + off_nothing(finding_.numbers[3]) + " nearer";
    }

    const Job& job_;
    const Finding& finding_;
    Tape tape_;
};

}  // namespace rakewright
