using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace LinkMargin.Files.Writing;

/// <summary>What a path leads to.</summary>
internal enum FileKind
{
    /// <summary>Nothing, or nothing accessible.</summary>
    None,

    /// <summary>A regular file.</summary>
    Regular,

    /// <summary>A folder.</summary>
    Folder,

    /// <summary>A terminal, pipe, socket or similar, which is written to directly and cannot be replaced.</summary>
    Stream,

    /// <summary>A block device.</summary>
    Disk,
}

/// <summary>Identifies a file however its name is written: two names of the same file give the same identity.</summary>
/// <param name="Volume">The file system it is on.</param>
/// <param name="Number">Its file number there.</param>
internal readonly record struct FileIdentity(ulong Volume, ulong Number);

/// <summary>
/// Asks the system what a path leads to. Links are followed and nothing is opened, because opening a pipe waits for its other
/// end. The framework can neither tell a device from a file nor whether two paths are the same file.
/// </summary>
internal static class SystemFile
{
    // Type bits of a file's mode, the same on every Unix (POSIX leaves the values open; these are those of Linux and macOS).
    private const int TypeMask = 0xF000, RegularType = 0x8000, FolderType = 0x4000, DiskType = 0x6000;

    /// <summary>What a path leads to.</summary>
    public static FileKind KindOf(string path)
    {
        string full = Path.GetFullPath(path);
        if (OperatingSystem.IsWindows())
        {
            return full.StartsWith(@"\\.\", StringComparison.Ordinal) ? FileKind.Stream
                : Directory.Exists(full) ? FileKind.Folder
                : File.Exists(full) ? FileKind.Regular
                : FileKind.None;
        }

        return Look(full) is not { } status
            ? FileKind.None
            : (status.Mode & TypeMask) switch
            {
                RegularType => FileKind.Regular,
                FolderType => FileKind.Folder,
                DiskType => FileKind.Disk,
                _ => FileKind.Stream,
            };
    }

    /// <summary>The identity of the file or folder that a path leads to; null if there is none.</summary>
    public static FileIdentity? IdentityOf(string path)
    {
        string full = Path.GetFullPath(path);
        return OperatingSystem.IsWindows()
            ? WindowsIdentityOf(full)
            : Look(full) is { } status ? new FileIdentity((ulong)status.Device, (ulong)status.Number) : null;
    }

    /// <summary>Whether two paths lead to the same regular file.</summary>
    public static bool IsSame(string one, string other) =>
        KindOf(one) == FileKind.Regular && IdentityOf(one) is { } identity && identity == IdentityOf(other);

    private static UnixStatus? Look(string full) =>
        Stat([.. Encoding.UTF8.GetBytes(full), 0], out UnixStatus status) == 0 ? status : null;

    private static FileIdentity? WindowsIdentityOf(string full)
    {
        try
        {
            using SafeFileHandle handle = File.OpenHandle(full, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            uint[] about = new uint[WindowsAboutWords];
            return GetFileInformationByHandle(handle, about)
                ? new FileIdentity(about[WindowsVolume], ((ulong)about[WindowsNumberHigh] << 32) | about[WindowsNumberLow])
                : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    // The framework's own wrapper of stat(2), the same on every Unix it runs on; the C library's layout differs between systems.
    [DllImport("libSystem.Native", EntryPoint = "SystemNative_Stat")]
    private static extern int Stat(byte[] path, out UnixStatus status);

    // BY_HANDLE_FILE_INFORMATION as thirteen 32-bit words: attributes, three times of two words each, volume, size of two
    // words, link count, file number of two words.
    private const int WindowsAboutWords = 13, WindowsVolume = 7, WindowsNumberHigh = 11, WindowsNumberLow = 12;

    [DllImport("kernel32.dll")]
    [return: MarshalAs(UnmanagedType.Bool)]
    private static extern bool GetFileInformationByHandle(SafeFileHandle file, [Out] uint[] about);

#pragma warning disable CS0649 // filled in by the system
    private struct UnixStatus
    {
        public int Flags, Mode;
        public uint User, Group;
        public long Size, AccessTime, AccessNanoseconds, ChangeTime, ChangeNanoseconds, StatusTime, StatusNanoseconds, BirthTime, BirthNanoseconds;
        public long Device, RawDevice, Number;
        public uint UserFlags;
    }
#pragma warning restore CS0649
}
