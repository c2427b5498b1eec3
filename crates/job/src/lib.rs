//! The record of the work: customer, car, damage, readings, papers.
