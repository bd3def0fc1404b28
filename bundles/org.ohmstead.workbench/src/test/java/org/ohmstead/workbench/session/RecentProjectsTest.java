// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecentProjectsTest {
    @TempDir
    Path parent;

    private List<String> stored = List.of();
    private final RecentProjects recent = new RecentProjects(new RecentProjects.Store() {
        @Override
        public List<String> load() {
            return stored;
        }

        @Override
        public void save(List<String> paths) {
            stored = List.copyOf(paths);
        }
    });

    @Test
    void listsTheLatestFirstAndEachOnce() {
        recent.opened(parent.resolve("a.ohmstead"));
        recent.opened(parent.resolve("b.ohmstead"));
        recent.opened(parent.resolve("x/../a.ohmstead"));
        assertEquals(
                List.of("a", "b"),
                recent.list().stream().map(RecentProjects.Recent::name).toList());
    }

    @Test
    void forgetsTheOldestBeyondTwelve() {
        for (int number = 1; number <= 14; number++) {
            recent.opened(parent.resolve(number + ".ohmstead"));
        }
        List<RecentProjects.Recent> list = recent.list();
        assertEquals(RecentProjects.MOST, list.size());
        assertEquals("14", list.get(0).name());
        assertEquals("3", list.get(11).name());
    }

    @Test
    void marksTheVanished() throws Exception {
        Path folder = SampleFolder.copyInto(parent);
        recent.opened(folder);
        assertFalse(recent.list().get(0).vanished());
        Files.delete(SampleFolder.file(folder));
        assertTrue(recent.list().get(0).vanished());
        recent.forget(folder);
        assertEquals(List.of(), recent.list());
    }

    @Test
    void overlooksWhatIsNoPathHere() {
        stored = List.of("", "a\0b", parent.resolve("a.ohmstead").toString());
        assertEquals(1, recent.list().size());
    }
}
