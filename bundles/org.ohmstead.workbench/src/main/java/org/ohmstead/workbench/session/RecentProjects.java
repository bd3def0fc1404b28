// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.json.ProjectFile;

/** The projects that were opened last, the latest first. */
public final class RecentProjects {
    /** How many are remembered. */
    public static final int MOST = 12;

    /** Where the list is kept, such as the workbench's preferences. */
    public interface Store {
        /** Returns the paths that were saved last, empty when none were. */
        List<String> load();

        /** Keeps the paths. */
        void save(List<String> paths);
    }

    /**
     * A project that was opened.
     *
     * @param folder where
     * @param name name of its folder without the ending
     * @param vanished whether it is not there now
     */
    public record Recent(Path folder, String name, boolean vanished) {
        public Recent {
            Objects.requireNonNull(folder, "folder");
            Objects.requireNonNull(name, "name");
        }
    }

    private final Store store;

    /**
     * Makes the list.
     *
     * @param store where it is kept
     */
    public RecentProjects(Store store) {
        this.store = Objects.requireNonNull(store, "store");
    }

    /** Returns the projects, the latest first. Looks at the disk, which may take a while for one that lies on a network. */
    public List<Recent> list() {
        return paths().stream()
                .map(path -> new Recent(path, name(path), !Files.isRegularFile(path.resolve(ProjectFile.FILE_NAME))))
                .toList();
    }

    /** Puts a project at the head of the list; the oldest beyond {@link #MOST} is forgotten. */
    public void opened(Path folder) {
        Path path = folder.toAbsolutePath().normalize();
        List<Path> paths = new ArrayList<>(paths());
        paths.remove(path);
        paths.add(0, path);
        save(paths);
    }

    /** Takes a project off the list. */
    public void forget(Path folder) {
        List<Path> paths = new ArrayList<>(paths());
        paths.remove(folder.toAbsolutePath().normalize());
        save(paths);
    }

    private void save(List<Path> paths) {
        store.save(paths.stream().limit(MOST).map(Path::toString).toList());
    }

    private List<Path> paths() {
        return store.load().stream()
                .flatMap(text -> parse(text).stream())
                .distinct()
                .limit(MOST)
                .toList();
    }

    // What is stored may come from another system.
    private static Optional<Path> parse(String text) {
        try {
            return text.isBlank() ? Optional.empty() : Optional.of(Path.of(text));
        } catch (InvalidPathException otherSystem) {
            return Optional.empty();
        }
    }

    private static String name(Path folder) {
        Path last = folder.getFileName();
        String name = last == null ? folder.toString() : last.toString();
        return name.endsWith(ProjectFile.FOLDER_SUFFIX)
                ? name.substring(0, name.length() - ProjectFile.FOLDER_SUFFIX.length())
                : name;
    }
}
