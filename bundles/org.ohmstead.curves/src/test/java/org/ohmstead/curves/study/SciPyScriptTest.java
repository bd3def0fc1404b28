// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The scripts beside the tests give what the study gives, where Python with SciPy is installed. */
class SciPyScriptTest {
    private static final double REL_SAME = 1e-6;
    private static final double REL_ROBUST = 1e-5;

    @Test
    void curveFitGivesTheSame() throws IOException, InterruptedException {
        assumeTrue(SciPyScript.available(), "python3-numpy and python3-scipy are not installed");
        List<StudyPoint> points = StudyData.sixty();
        double[] scipy = SciPyScript.run(Path.of("src/test/python/power_fit.py"), points, 0)[0];
        PowerStudy study = (PowerStudy) PowerStudy.of(StudyRequest.of(points));
        for (int j = 0; j < 3; j++) {
            FittedParameter found = study.fit().parameters().get(j);
            assertEquals(scipy[j], found.estimate().value(), REL_SAME * scipy[j]);
            assertEquals(scipy[3 + j], found.estimate().standardUncertainty(), REL_SAME * scipy[3 + j]);
        }
    }

    @Test
    void leastSquaresWithHubersLossGivesTheSame() throws IOException, InterruptedException {
        assumeTrue(SciPyScript.available(), "python3-numpy and python3-scipy are not installed");
        List<StudyPoint> points = StudyData.sixty();
        double[] scipy = SciPyScript.run(Path.of("src/test/python/huber_fit.py"), points, 0)[0];
        // The same numbers as in PowerStudyTest, where the robust fit is held against them.
        double[] noted = {2.78204009669, 2.78593271585, 0.0986944383431, 1.09219101529, 131.396769344};
        for (int j = 0; j < noted.length; j++) {
            assertEquals(noted[j], scipy[j], REL_ROBUST * noted[j]);
        }
    }
}
