//! The number alone against the whole conversion: the same bits, or the same refusal, on every route.

use biteband_hardness::{Axis, Choice, Material, Route, Scale};

#[test]
fn the_number_alone_is_that_of_the_conversion() {
    let mut axes: Vec<Axis> = Scale::ALL.iter().map(|scale| Axis::Hardness(*scale)).collect();
    axes.push(Axis::Tensile);
    let mut met = 0_u32;
    for material in Material::ALL {
        let choice = Choice::of(material);
        for &from in &axes {
            for &to in &axes {
                let Ok(route) = Route::new(from, to, choice) else { continue };
                // Places on rows, between them, and beyond both ends; 2600 MPa is above every table.
                let (step, most) =
                    if from == Axis::Tensile { (4.7, 2600.0) } else { (0.73, 1000.0) };
                let mut value = 0.0;
                while value < most {
                    for value in [value, f64::round(value)] {
                        let whole = route.convert(value).map(|found| found.at.value.to_bits());
                        let alone = route.number(value).map(f64::to_bits);
                        assert_eq!(alone, whole, "{value} {from} to {to}");
                        met += u32::from(whole.is_ok());
                    }
                    value += step;
                }
            }
        }
    }
    assert!(met > 20_000, "{met}");
}
