#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace rakewright {

/// Where a linear program stands: what its rows ask for, which columns it may use, and its basis.
struct LinearState {
    std::vector<double> least, most;
    std::vector<char> banned;   // a column each
    std::vector<int> basis;     // a column, or the sum of row -1 - it
    std::vector<char> at_most;  // a row each: its sum, where it is not in the basis, lies at the most and not the least
    std::vector<double> inverse;
};

/// The cheapest sum of columns, none taken less than 0 times, whose sums by row lie within bounds: the simplex method
/// with the inverse of its basis written out, dual after bounds have changed and primal after columns have come. All
/// costs must be 0 or more. Sums are done in the order of rows and columns, so every processor comes to the same.
class LinearProgram {
 public:
    enum class Outcome { solved, too_dear, impossible, gave_up };

    LinearProgram() = default;
    explicit LinearProgram(std::vector<double> least);

    std::size_t rows() const { return state_.basis.size(); }
    std::size_t columns() const { return cost_.size(); }

    /// `entries`: one a row.
    void add_column(double cost, const std::vector<int>& entries);
    /// `entries`: one a column. Rows come off again where a state before them is restored.
    void add_row(std::vector<double> entries, double least, double most);
    void bound_row(std::size_t row, double least, double most);
    void ban(std::size_t column);

    /// Too dear: more than `dearest`, which is noticed early. Gave up: too many steps.
    Outcome solve(double dearest);

    double cost() const;
    /// What a piece more of each row costs.
    const std::vector<double>& worth() const { return worth_; }
    /// What one more of a column adds to the cost.
    double reduced(std::size_t column) const { return reduced_[column]; }
    /// How many times over each column is taken.
    std::vector<double> levels() const;

    const LinearState& state() const { return state_; }
    void restore(const LinearState& state);

    /// Steps so far, each counted by the numbers that it went through.
    std::int64_t work() const { return work_; }

 private:
    /// What one more of each column, and of each row's sum, takes away from a variable in the basis.
    struct RowOfBasis {
        std::vector<double> columns, sums;
    };

    double least_of(int variable) const;
    double most_of(int variable) const;
    void refresh();
    void mark_basis();
    bool invert();
    void find_levels();
    void find_worth();
    RowOfBasis row_of_basis(std::size_t place);
    std::vector<double> change_by(int variable) const;
    void pivot(std::size_t place, int enters, bool leaves_at_most, const std::vector<double>& change,
               const RowOfBasis& row);
    Outcome dual(double dearest);
    Outcome primal();

    std::vector<std::vector<double>> entries_;  // a row each
    std::vector<double> cost_;
    LinearState state_;
    std::vector<char> column_in_basis_, sum_in_basis_;
    std::vector<double> level_, worth_, reduced_;  // of the basis; of the rows; of the columns
    bool sound_ = true;                            // the basis has an inverse
    int pivots_ = 0;
    std::int64_t work_ = 0;
};

}  // namespace rakewright
