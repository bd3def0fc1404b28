// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.Lessons;
import org.ohmstead.units.Unit;

class SliderPlacesTest {
    @Test
    void aSliderWithStepsHasAPlaceForEach() {
        SliderPlaces places =
                new SliderPlaces(new Control.Slider("supply", "Supply", Unit.VOLT, 10, 16, 14.4, false, 0.1, 3));
        assertEquals(60, places.last());
        assertEquals(44, places.place(14.4));
        assertEquals(14.4, places.value(44), 1e-9);
        assertEquals(10, places.value(0));
        assertEquals(16, places.value(60));
        assertEquals(6, places.page());
    }

    @Test
    void equalWaysOfALogarithmicSliderAreEqualRatios() {
        SliderPlaces places = new SliderPlaces(new Control.Slider("load", "Load", Unit.OHM, 1, 16, 4, true, 0, 3));
        int half = places.last() / 2;
        assertEquals(4, places.value(half));
        // A quarter of the way of 1 to 16 is the fourth root of 16.
        assertEquals(2, places.value(half / 2));
    }

    @Test
    void whatIsWorkedOutIsWhatIsShown() {
        SliderPlaces places = new SliderPlaces(new Control.Slider("load", "Load", Unit.OHM, 1, 16, 4, true, 0, 3));
        for (int place = 0; place <= places.last(); place++) {
            double value = places.value(place);
            assertEquals(Math.rint(value * 1000) / 1000, value, 1e-12, "more digits than are shown");
            assertEquals(place, places.place(value), 1, "at " + value);
        }
    }

    @Test
    void everySliderOfEveryLessonReachesItsEndsAndStart() {
        for (Lesson lesson : Lessons.builtIn()) {
            for (Control control : lesson.controls()) {
                if (control instanceof Control.Slider slider) {
                    SliderPlaces places = new SliderPlaces(slider);
                    assertEquals(slider.least(), places.value(0), 1e-9, lesson + " " + slider.id());
                    assertEquals(slider.most(), places.value(places.last()), 1e-9, lesson + " " + slider.id());
                    double near = places.value(places.place(slider.start()));
                    assertTrue(Math.abs(near / slider.start() - 1) < 0.02, lesson + " " + slider.id() + " " + near);
                }
            }
        }
    }
}
