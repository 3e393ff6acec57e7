using System.Runtime.InteropServices;
using System.Text;

namespace LinkMargin.Cli.Invoking;

/// <summary>
/// Standard output and standard error as the parent process left them. If one is closed, the next file to be opened gets its
/// number, and text for a person would go into that file. Also, the framework's own stream hides a broken pipe: it takes a pipe
/// without a reader for one read to the end.
/// </summary>
internal static class StandardStreams
{
    private const int OutputNumber = 1, ErrorNumber = 2;

    /// <summary>Whether there is a standard output to write to.</summary>
    public static bool HasOutput => IsGiven(OutputNumber);

    /// <summary>Whether there is a standard error to write to.</summary>
    public static bool HasError => IsGiven(ErrorNumber);

    /// <summary>Standard output, buffered and in UTF-8, since names are shown as people wrote them.</summary>
    public static TextWriter OpenOutput() => new StreamWriter(
        OperatingSystem.IsWindows() ? Console.OpenStandardOutput() : new DescriptorStream(OutputNumber), new UTF8Encoding(false));

    /// <summary>Standard error, unbuffered; the console's own on a terminal, which a progress bar needs.</summary>
    public static TextWriter OpenError() => OperatingSystem.IsWindows() || !Console.IsErrorRedirected
        ? Console.Error
        : new StreamWriter(new DescriptorStream(ErrorNumber), new UTF8Encoding(false)) { AutoFlush = true };

    // An inherited descriptor stays open across exec; one that the program itself opened is marked close-on-exec.
    private static bool IsGiven(int number)
    {
        const int GetFlags = 1, CloseOnStart = 1; // F_GETFD, FD_CLOEXEC
        return OperatingSystem.IsWindows() || (Control(number, GetFlags) is var flags and >= 0 && (flags & CloseOnStart) == 0);
    }

    [DllImport("libc", EntryPoint = "fcntl")]
    private static extern int Control(int descriptor, int command);

    /// <summary>Writes to an open descriptor whose file position may be shared with other programs.</summary>
    private sealed class DescriptorStream(int descriptor) : Stream
    {
        private const int Interrupted = 4; // EINTR
        private const int WaitMilliseconds = 5;

        // EAGAIN: a pipe that somebody made non-blocking.
        private static readonly int Busy = OperatingSystem.IsLinux() ? 11 : 35;

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            while (!buffer.IsEmpty)
            {
                nint written = WriteSome(descriptor, in MemoryMarshal.GetReference(buffer), buffer.Length);
                if (written >= 0)
                {
                    buffer = buffer[(int)written..];
                    continue;
                }

                int fault = Marshal.GetLastPInvokeError();
                if (fault == Busy)
                {
                    Thread.Sleep(WaitMilliseconds);
                }
                else if (fault != Interrupted)
                {
                    throw new IOException(Marshal.GetPInvokeErrorMessage(fault), fault);
                }
            }
        }

        public override void Flush()
        {
            // Nothing is buffered.
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        [DllImport("libc", EntryPoint = "write", SetLastError = true)]
        private static extern nint WriteSome(int descriptor, in byte buffer, nint count);
    }
}
