// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class FuzzingTest {
    private static final long MOST_KEPT_BYTES = 200_000;
    private static final Path KEPT = Path.of("src/test/resources/org/ohmstead/fuzz/KeptInputsTestInputs");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @EnumSource(Target.class)
    void everyTargetHasWordsInputsAndATest(Target target) throws Exception {
        assertTrue(Files.size(Path.of("src/main/dictionaries", target.word() + ".dict")) > 0);
        try (Stream<Path> kept = Files.list(KEPT.resolve(target.word()))) {
            assertTrue(kept.count() > 1);
        }
        Set<String> tests = Arrays.stream(KeptInputsTest.class.getDeclaredMethods())
                .filter(method -> method.isAnnotationPresent(FuzzTest.class))
                .map(method -> method.getName())
                .collect(Collectors.toSet());
        assertTrue(tests.contains(target.word()), tests::toString);
        assertDoesNotThrow(() -> target.reader().getMethod("fuzzerTestOneInput", byte[].class));
    }

    @Test
    void keptInputsStaySmall() throws Exception {
        try (Stream<Path> all = Files.walk(KEPT)) {
            assertTrue(all.mapToLong(file -> file.toFile().length()).sum() < MOST_KEPT_BYTES);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"nothing", "--minutes=", "--minutes=0", "--minutes=999999", "--seconds=-1"})
    void refusesOtherWords(String word) {
        assertEquals(2, Fuzzing.run(folder, folder, List.of(word)));
    }

    @Test
    void listsWithoutFuzzing() {
        assertEquals(0, Fuzzing.run(folder, folder, List.of("--list")));
    }

    @Test
    void boundsAreFeltTwiceOnly() {
        int[] calls = {0};
        Bounds.hold(() -> {
            calls[0]++;
            if (calls[0] == 1) {
                fill();
            }
        });
        assertEquals(2, calls[0]);
        assertThrows(AssertionError.class, () -> Bounds.hold(FuzzingTest::fill));
    }

    private static void fill() {
        long sum = 0;
        for (int i = 0; i < 100; i++) {
            sum += new byte[1 << 20].length;
        }
        assertTrue(sum > 0);
    }
}
