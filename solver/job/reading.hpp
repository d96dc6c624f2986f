#pragma once

#include <cstdint>
#include <string>

#include "../measure/angle.hpp"
#include "../measure/length.hpp"

// What is read, counted or named in a job, each with its place in the text.

namespace rakewright {

/// Where in the job's text a value stands, in bytes. The solver never looks at it: it hands it back in its findings.
struct Place {
    std::uint32_t begin = 0;
    std::uint32_t size = 0;
};

/// A number that somebody read off a tape or chose, and where it is written.
struct Reading {
    double value = 0;
    Place place;
    Reading() = default;
    Reading(double number) : value(number) {}
    Reading(double number, Place where) : value(number), place(where) {}
    operator double() const { return value; }
};

/// An angle that somebody read off a level or chose, and where it is written.
struct AngleReading {
    Angle angle;
    Place place;
};

/// A count that somebody gave, and where it is written.
struct Count {
    int value = 0;
    Place place;
    Count() = default;
    Count(int number) : value(number) {}
    Count(int number, Place where) : value(number), place(where) {}
    operator int() const { return value; }
};

/// What something in the job is called.
struct Id {
    std::string name;
    Place place;
};

/// Another thing of the job, named: its index in the job's list, or -1 where none is named.
struct Ref {
    int index = -1;
    Place place;
    bool named() const { return index >= 0; }
};

}  // namespace rakewright
