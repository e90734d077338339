//! js
