//! Pictures as plain data: numbers go in, a [`drawing::Drawing`] with its spoken sentence comes
//! out. No picture judges a number; verdicts come from the core. The app and the record file draw
//! the same ones.

pub mod band;
pub mod drawing;
pub mod fit;
pub mod gauge;
pub mod layouts;
pub mod leak;
pub mod left_over;
pub mod offset_tool;
pub mod oring;
pub mod print;
pub mod runout;
pub mod scale;
pub mod seals;
pub mod section;
pub mod signature;
pub mod svg;
pub mod tin;
pub mod trials;
pub mod turn;
